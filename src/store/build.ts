declare const __BUILD__: string;

/** Which build this is, for what leaves the app: the foot of Kit, the header of a backup, a signed page. */
export const BUILD: string = __BUILD__;
