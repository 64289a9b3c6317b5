import { useEffect, useRef } from 'react';

/** Of the Shape Detection API, which not every browser has. */
type Detector = { detect(source: HTMLVideoElement): Promise<{ rawValue: string }[]> };
type DetectorMaker = new (options: { formats: string[] }) => Detector;

function detectorMaker(): DetectorMaker | null {
  const found: unknown = Reflect.get(globalThis, 'BarcodeDetector');
  return typeof found === 'function' ? (found as DetectorMaker) : null;
}

export function canReadCodes(): boolean {
  return detectorMaker() !== null && 'mediaDevices' in navigator;
}

const LOOK_EVERY_MS = 200;

/** The rear camera, looking for QR codes. Nothing it sees is kept. */
export function CodeCamera({
  label,
  className,
  onText,
  onRefused,
}: {
  label: string;
  className?: string | undefined;
  onText: (text: string) => void;
  onRefused: () => void;
}) {
  const video = useRef<HTMLVideoElement>(null);
  const told = useRef({ onText, onRefused });
  told.current = { onText, onRefused };
  useEffect(() => {
    let stream: MediaStream | null = null;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let left = false;
    const Maker = detectorMaker();
    const detector = Maker && new Maker({ formats: ['qr_code'] });
    const look = async () => {
      const element = video.current;
      if (left || !element || !detector) return;
      const codes = await detector.detect(element).catch(() => []);
      if (left) return;
      const text = codes[0]?.rawValue;
      if (text) told.current.onText(text);
      timer = setTimeout(look, LOOK_EVERY_MS);
    };
    const start = async () => {
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
      if (left || !video.current) {
        for (const track of stream.getTracks()) track.stop();
        return;
      }
      video.current.srcObject = stream;
      await video.current.play();
      await look();
    };
    start().catch(() => {
      if (!left) told.current.onRefused();
    });
    return () => {
      left = true;
      clearTimeout(timer);
      for (const track of stream?.getTracks() ?? []) track.stop();
    };
  }, []);
  return <video ref={video} className={className} aria-label={label} muted playsInline />;
}
