/**
 * What is wrong with a file, a link or a backup, in the language of the screen. The core says it in English, one clear line:
 * a path and a sentence from a small stock. German has the same stock; a test holds the two together on broken files.
 */
import type { Language } from "./words.tsx";

/** Sentences, and what stands in them: each with its German, `$1` the first part that varies, itself German already. */
type Stock = readonly (readonly [english: RegExp, german: string])[];

/** What is allowed or needed. */
const ALLOWED: Stock = [
  [/^text$/, "ein Text"],
  [/^a list$/, "eine Liste"],
  [/^an object$/, "ein Objekt"],
  [/^an object of measured facets$/, "ein Objekt gemessener Facetten"],
  [/^true or false$/, "true oder false"],
  [/^any finite number$/, "jede endliche Zahl"],
  [/^a number \((.+)\) or null$/, "eine Zahl ($1) oder null"],
  [/^a number \((.+)\)$/, "eine Zahl ($1)"],
  [/^(.+) \(or null for a free protractor\)$/, "$1 (oder null für einen freien Winkelmesser)"],
  [/^a whole number from (\S+) to (\S+)$/, "eine ganze Zahl von $1 bis $2"],
  [/^more than (\S+), at most (\S+)$/, "mehr als $1, höchstens $2"],
  [/^two numbers \[least, greatest\]$/, "zwei Zahlen [kleinste, größte]"],
  [/^three numbers \[red, green, blue\]$/, "drei Zahlen [Rot, Grün, Blau]"],
  [/^three numbers \[x, y, z\]$/, "drei Zahlen [x, y, z]"],
  [/^one of the depth rules (.+)$/, "eine der Tiefenregeln $1"],
  [/^one of the designs (.+)$/, "eines der Motive $1"],
  [/^one of (.+)$/, "eines von $1"],
  [/^(.+) or an own glass (\{.+\})$/, "$1 oder ein eigenes Glas $2"],
  [/^(-?[\d.e+]+) to (-?[\d.e+]+)$/, "$1 bis $2"],
];

/** What stands in the file, where no value can be shown. */
const FOUND: Stock = [
  [/^nothing$/, "nichts"],
  [/^a list$/, "eine Liste"],
  [/^an object$/, "ein Objekt"],
];

/** What is wrong with a field, after its path. */
const WITH_FIELD: Stock = [
  [/^missing, (.+) needed$/s, "fehlt, nötig ist $1"],
  [/^(.*) is out of range, (.+) allowed$/s, "$1 liegt außerhalb, erlaubt ist $2"],
  [
    /^(.*) is too short, (\d+) to (\d+) characters allowed$/s,
    "$1 ist zu kurz, erlaubt sind $2 bis $3 Zeichen",
  ],
  [
    /^(.*) is too long, (\d+) to (\d+) characters allowed$/s,
    "$1 ist zu lang, erlaubt sind $2 bis $3 Zeichen",
  ],
  [/^too many entries, at most (\d+) allowed$/, "zu viele Einträge, erlaubt sind höchstens $1"],
  [/^this id is not allowed$/, "diese Kennung ist nicht erlaubt"],
  [/^this field name is not allowed$/, "dieser Feldname ist nicht erlaubt"],
  [/^the number is too large to be held$/, "die Zahl ist zu groß, um sie aufzuheben"],
  [
    /^the first number is greater than the second, (.+) needed$/,
    "die erste Zahl ist größer als die zweite, nötig ist [kleinste, größte]",
  ],
  [
    /^(.*) is used twice, every id must be different$/s,
    "$1 kommt zweimal vor, jede Kennung muss anders sein",
  ],
  [
    /^there is no tier (.*), only an earlier tier may be named$/s,
    "es gibt keine Reihe $1, nennen lässt sich nur eine frühere",
  ],
  [
    /^the tier names itself, only an earlier tier may be named$/,
    "die Reihe nennt sich selbst, nennen lässt sich nur eine frühere",
  ],
  [
    /^(.*) is cut later than this tier, only an earlier tier may be named$/s,
    "$1 wird später geschliffen als diese Reihe, nennen lässt sich nur eine frühere",
  ],
  [/^there is no facet (.*), (.*) to (.*) allowed$/s, "es gibt keine Facette $1, erlaubt sind $2 bis $3"],
  [
    /^(\d+) facets in all are too many, at most (\d+) allowed$/,
    "$1 Facetten sind zusammen zu viele, erlaubt sind höchstens $2",
  ],
  [/^(.*) is no version number, (.+) allowed$/s, "$1 ist keine Versionsnummer, erlaubt ist $2"],
  [
    /^the plan was written by a newer version of Glintwright \(plan version (\S+)\), this one reads (.+)$/,
    "den Plan hat eine neuere Fassung von Glintwright geschrieben (Planversion $1), diese liest $2",
  ],
  [/^(.*), "glintwright-plan" needed$/s, '$1, nötig ist "glintwright-plan"'],
  [/^(.*) is not (.+)$/s, "hier steht $1, nötig ist $2"],
];

/** What is wrong with the whole. */
const WHOLE: Stock = [
  [
    /^the file is too large: (\d+) characters, at most (\d+) allowed$/,
    "die Datei ist zu groß: $1 Zeichen, erlaubt sind höchstens $2",
  ],
  [/^the file is empty, a plan in JSON is needed$/, "die Datei ist leer, nötig ist ein Plan in JSON"],
  [
    /^brackets are nested too deeply, at most (\d+) levels allowed$/,
    "Klammern sind zu tief verschachtelt, erlaubt sind höchstens $1 Ebenen",
  ],
  [
    /^the file is not valid JSON: it ends too early, at line (\d+), column (\d+)$/,
    "die Datei ist kein gültiges JSON: Sie endet zu früh, in Zeile $1, Spalte $2",
  ],
  [
    /^the file is not valid JSON: line (\d+), column (\d+)$/,
    "die Datei ist kein gültiges JSON: Zeile $1, Spalte $2",
  ],
  [
    /^the file holds (.+), a plan \(an object\) is needed$/s,
    "die Datei enthält $1, nötig ist ein Plan (ein Objekt)",
  ],
  [
    /^the link is damaged: part of it is missing or was changed$/,
    "der Link ist beschädigt: Ein Teil fehlt oder wurde verändert",
  ],
  [/^the link holds more than a plan can$/, "der Link enthält mehr, als ein Plan kann"],
  [
    /^the link was made by a newer version of Glintwright, or is damaged$/,
    "den Link hat eine neuere Fassung von Glintwright gemacht, oder er ist beschädigt",
  ],
  [
    /^the link is too long: (\d+) characters, at most (\d+) allowed$/,
    "der Link ist zu lang: $1 Zeichen, erlaubt sind höchstens $2",
  ],
  [/^the backup is too large$/, "die Sicherung ist zu groß"],
  [
    /^this file is no backup of a library \(a zip file is needed\)$/,
    "diese Datei ist keine Sicherung von Plänen (nötig ist eine ZIP-Datei)",
  ],
  [
    /^this file is no backup of a library \((.+) is missing\)$/,
    "diese Datei ist keine Sicherung von Plänen ($1 fehlt)",
  ],
  [
    /^the list of plans in this backup can't be read \((.+)\)$/s,
    "die Liste der Pläne in dieser Sicherung ist nicht lesbar ($1)",
  ],
  [/^the file is missing in the backup$/, "die Datei fehlt in der Sicherung"],
  [/^this plan is not in the library any more$/, "dieser Plan liegt nicht mehr im Regal"],
];

const fill = (german: string, parts: readonly string[]): string =>
  german.replace(/\$(\d)/g, (_, place) => parts[Number(place) - 1]);

/** A part of a sentence: what is allowed, what was found, or a value as it stands. */
function partInGerman(part: string): string {
  for (const [english, german] of [...ALLOWED, ...FOUND]) {
    const match = english.exec(part);
    if (match) return fill(german, match.slice(1).map(partInGerman));
  }
  return part;
}

function fromStock(stock: Stock, text: string): string | null {
  for (const [english, german] of stock) {
    const match = english.exec(text);
    if (match) return fill(german, match.slice(1).map(partInGerman));
  }
  return null;
}

const MORE = / \(and (\d+) more problems?\)$/;
/** `tiers[2].armAngleDeg: what is wrong`; a name in brackets and quotes may hold anything. */
const FIELD =
  /^((?:the plan|[A-Za-z_]\w*|\["(?:[^"\\]|\\.)*"\])(?:\.[A-Za-z_]\w*|\[\d+\]|\["(?:[^"\\]|\\.)*"\])*): (.*)$/s;

/** The German of a line that the core says about a file, a link or a backup; null when it is not in the stock. */
export function fileErrorInGerman(message: string): string | null {
  const whole = fromStock(WHOLE, message);
  if (whole !== null) return whole;
  const more = MORE.exec(message);
  const field = FIELD.exec(more ? message.slice(0, more.index) : message);
  if (!field) return null;
  const wrong = fromStock(WITH_FIELD, field[2]);
  if (wrong === null) return null;
  const rest = more ? ` (und ${more[1] === "1" ? "1 weiterer Fehler" : `${more[1]} weitere Fehler`})` : "";
  return `${field[1] === "the plan" ? "der Plan" : field[1]}: ${wrong}${rest}`;
}

/** A line about a file, a link or a backup in the language of the screen. */
export const fileErrorInWords = (message: string, language: Language): string =>
  language === "de" ? (fileErrorInGerman(message) ?? message) : message;
