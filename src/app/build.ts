declare const __BUILD__: string;

/** Which build this is: the package's version and a hash of its sources. Stands in About, in exports and on signed pages. */
export const BUILD: string = __BUILD__;
