/** What tests take from `setup.mjs`. */
export declare function findChromium(isForTests?: boolean): string | undefined;
