/** What is wrong with a file, a link or a backup, in German; numbers and names stand as in the file. */

import type { FileFaultWords } from "../file-faults.ts";
import { plural } from "./counted.ts";

export const fileFaults: FileFaultWords = {
  faults: {
    missing: ({ allowed }) => `fehlt, nötig ist ${allowed}`,
    "wrong-kind": ({ found, allowed }) => `hier steht ${found}, nötig ist ${allowed}`,
    "out-of-range": ({ found, allowed }) => `${found} liegt außerhalb, erlaubt ist ${allowed}`,
    "too-short": ({ found, least, most }) =>
      `${found} ist zu kurz, erlaubt sind ${least} bis ${most} Zeichen`,
    "too-long": ({ found, least, most }) => `${found} ist zu lang, erlaubt sind ${least} bis ${most} Zeichen`,
    "too-many-entries": ({ most }) => `zu viele Einträge, erlaubt sind höchstens ${most}`,
    "least-above-greatest": "die erste Zahl ist größer als die zweite, nötig ist [kleinste, größte]",
    "id-forbidden": "diese Kennung ist nicht erlaubt",
    "name-forbidden": "dieser Feldname ist nicht erlaubt",
    "number-too-large": "die Zahl ist zu groß, um sie aufzuheben",
    "no-such-field": "dieses Feld gibt es nicht",
    "id-used-twice": ({ id }) => `${id} kommt zweimal vor, jede Kennung muss anders sein`,
    "no-such-tier": ({ id }) => `es gibt keine Reihe ${id}`,
    "names-no-tier": ({ id }) => `es gibt keine Reihe ${id}, nennen lässt sich nur eine frühere`,
    "names-itself": "die Reihe nennt sich selbst, nennen lässt sich nur eine frühere",
    "names-later-tier": ({ id }) =>
      `${id} wird später geschliffen als diese Reihe, nennen lässt sich nur eine frühere`,
    "no-such-facet": ({ id, first, last }) =>
      `es gibt keine Facette ${id}, erlaubt sind ${first} bis ${last}`,
    "too-many-facets": ({ count, most }) =>
      `${count} Facetten sind zusammen zu viele, erlaubt sind höchstens ${most}`,
    "picture-too-large": ({ width, height, most }) =>
      `das Bild hat ${width} mal ${height} Pixel, erlaubt sind höchstens ${most} mal ${most}`,
    "pictures-too-long": ({ characters, most }) =>
      `die Bilder sind zu groß: zusammen ${characters} Zeichen, erlaubt sind höchstens ${most}`,
    "not-reckoned":
      "dieser Plan lässt sich nicht genau berechnen: manche seiner Facetten liegen so nah an einer gemeinsamen Ebene, dass sich hier nicht sagen lässt, wie sie sich treffen; von zwei fast gleichen Reihen eine weglassen oder sie deutlich auseinandersetzen",
    "other-format": ({ found }) => `hier steht ${found}, nötig ist "glintwright-plan"`,
    "no-version": ({ found, allowed }) => `${found} ist keine Versionsnummer, erlaubt ist ${allowed}`,
    "newer-version": ({ found, allowed }) =>
      `den Plan hat eine neuere Fassung von Glintwright geschrieben (Planversion ${found}), diese liest ${allowed}`,
    "no-object": ({ found }) => `die Datei enthält ${found}, nötig ist ein Plan (ein Objekt)`,
    "file-unreadable": "die Datei lässt sich nicht von der Platte lesen",
    "file-too-heavy": ({ bytes, most }) =>
      `die Datei ist zu groß: ${bytes} Bytes, erlaubt sind höchstens ${most}`,
    "file-not-text": "die Datei ist kein Text in UTF-8",
    "file-too-long": ({ characters, most }) =>
      `die Datei ist zu groß: ${characters} Zeichen, erlaubt sind höchstens ${most}`,
    "file-empty": "die Datei ist leer, nötig ist ein Plan in JSON",
    "too-deep": ({ most }) => `Klammern sind zu tief verschachtelt, erlaubt sind höchstens ${most} Ebenen`,
    "json-cut-off": ({ line, column }) =>
      `die Datei ist kein gültiges JSON: Sie endet zu früh, in Zeile ${line}, Spalte ${column}`,
    "json-broken": ({ line, column }) => `die Datei ist kein gültiges JSON: Zeile ${line}, Spalte ${column}`,
    "link-damaged": "der Link ist beschädigt: Ein Teil fehlt oder wurde verändert",
    "link-too-full": "der Link enthält mehr, als ein Plan kann",
    "link-newer": "den Link hat eine neuere Fassung von Glintwright gemacht, oder er ist beschädigt",
    "link-too-long": ({ characters, most }) =>
      `der Link ist zu lang: ${characters} Zeichen, erlaubt sind höchstens ${most}`,
    "plan-too-long-for-link": ({ characters, most }) =>
      `der Plan ist zu groß für einen Link: ${characters} Zeichen, erlaubt sind höchstens ${most}; sichere ihn als Datei`,
    "link-too-long-for-code": ({ characters, most }) =>
      `der Link ist zu lang für einen QR-Code: ${characters} Zeichen, erlaubt sind höchstens ${most}`,
    "not-in-library": "dieser Plan liegt nicht mehr im Regal",
    "backup-too-large": "die Sicherung ist zu groß",
    "backup-no-zip": "diese Datei ist keine Sicherung von Plänen (nötig ist eine ZIP-Datei)",
    "backup-no-list": "diese Datei ist keine Sicherung von Plänen (library.json fehlt)",
    "backup-list-broken": ({ place }) =>
      `die Liste der Pläne in dieser Sicherung ist nicht lesbar (${place})`,
    "not-in-backup": "die Datei fehlt in der Sicherung",
  },
  allowed: {
    text: () => "ein Text",
    list: () => "eine Liste",
    object: () => "ein Objekt",
    "measured-facets": () => "ein Objekt gemessener Facetten",
    "true-or-false": () => "true oder false",
    "least-and-greatest": () => "zwei Zahlen [kleinste, größte]",
    colour: () => "drei Zahlen [Rot, Grün, Blau]",
    point: () => "drei Zahlen [x, y, z]",
    glass: (words) => `${words} oder ein eigenes Glas {name, nd, vd, densityGcm3}`,
    picture: () => "ein Bild in PNG oder JPEG als data:image/png;base64,... oder data:image/jpeg;base64,...",
    format: () => '"glintwright-plan"',
    currency: () => 'eine Währung in drei Großbuchstaben, etwa "EUR"',
    mark: () => "ein Bild (PNG oder SVG) als data-Adresse in Base64",
    number: (range) => `eine Zahl (${range})`,
    "number-or-null": (range) => `eine Zahl (${range}) oder null`,
    range: (range) => range,
    "range-or-free": (range) => `${range} (oder null für einen freien Winkelmesser)`,
    version: (range) => range,
    word: (words) => `eines von ${words}`,
    "depth-rule": (words) => `eine der Tiefenregeln ${words}`,
    design: (words) => `eines der Motive ${words}`,
  },
  range: {
    any: "jede endliche Zahl",
    above: (min, max) => `mehr als ${min}, höchstens ${max}`,
    whole: (min, max) => `eine ganze Zahl von ${min} bis ${max}`,
    between: (min, max) => `${min} bis ${max}`,
  },
  nothing: "nichts",
  list: "eine Liste",
  object: "ein Objekt",
  plan: "der Plan",
  more: (count) => plural(count, { one: "(und 1 weiterer Fehler)", other: `(und ${count} weitere Fehler)` }),
};
