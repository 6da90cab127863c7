import { customer as de } from "../../words/de/customer.ts";
import { customer as en } from "../../words/en/customer.ts";
import { dictionary } from "../../words/language.ts";

export const customerWords = dictionary(en, de);
