import { useRef } from 'react';
import { Button, type ButtonKind } from './Button.tsx';

/** Opens the camera of the phone, or where there is none the choice of a picture. */
export function PhotoButton({
  label,
  kind = 'second',
  disabled = false,
  onPhoto,
}: {
  label: string;
  kind?: ButtonKind;
  disabled?: boolean;
  onPhoto: (file: File) => void;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        aria-label={label}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file) onPhoto(file);
        }}
      />
      <Button kind={kind} disabled={disabled} onPress={() => input.current?.click()}>
        {label}
      </Button>
    </>
  );
}
