/** What tests take from `kernel.mjs`. */
export declare function digest(): string;
