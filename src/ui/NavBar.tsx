import styles from './NavBar.module.css';

export type Room = {
  href: string;
  label: string;
  current: boolean;
  /** How many things wait in the room, with what to say of them aloud. */
  waiting?: { count: number; label: string };
};

/** The bar of rooms at the foot. `label` names the bar for those who hear it. */
export function NavBar({ label, rooms }: { label: string; rooms: readonly Room[] }) {
  return (
    <nav className={styles.bar} aria-label={label}>
      <ul className={styles.rooms}>
        {rooms.map((room) => (
          <li key={room.href} className={styles.room}>
            <a className={styles.link} href={room.href} aria-current={room.current ? 'page' : undefined}>
              <span className={styles.word}>
                {room.label}
                {room.waiting && room.waiting.count > 0 && (
                  <>
                    <span className={styles.count} aria-hidden="true">
                      {room.waiting.count}
                    </span>
                    <span className="heard">{` ${room.waiting.label}`}</span>
                  </>
                )}
              </span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
