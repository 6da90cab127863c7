import { examples as de } from "../../words/de/examples.ts";
import { examples as en } from "../../words/en/examples.ts";
import { dictionary } from "../../words/language.ts";

export { exampleIn } from "./first-example.ts";

export const exampleWords = dictionary(en, de);
