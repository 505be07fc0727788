/** Put in by the build from package.json. */
declare const __CULET_VERSION__: string;

/** The program's version; from source, where no build has put it in, it says so. */
export const VERSION: string = typeof __CULET_VERSION__ === 'string' ? __CULET_VERSION__ : '0.0.0-source';
