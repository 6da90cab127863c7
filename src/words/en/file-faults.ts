/** What is wrong with a file, a link or a backup. */

import type { FileFaultWords } from "../file-faults.ts";
import { plural } from "./counted.ts";

export const fileFaults: FileFaultWords = {
  faults: {
    missing: ({ allowed }) => `missing, ${allowed} needed`,
    "wrong-kind": ({ found, allowed }) => `${found} is not ${allowed}`,
    "out-of-range": ({ found, allowed }) => `${found} is out of range, ${allowed} allowed`,
    "too-short": ({ found, least, most }) => `${found} is too short, ${least} to ${most} characters allowed`,
    "too-long": ({ found, least, most }) => `${found} is too long, ${least} to ${most} characters allowed`,
    "too-many-entries": ({ most }) => `too many entries, at most ${most} allowed`,
    "least-above-greatest": "the first number is greater than the second, [least, greatest] needed",
    "id-forbidden": "this id is not allowed",
    "name-forbidden": "this field name is not allowed",
    "number-too-large": "the number is too large to be held",
    "no-such-field": "there is no such field",
    "id-used-twice": ({ id }) => `${id} is used twice, every id must be different`,
    "no-such-tier": ({ id }) => `there is no tier ${id}`,
    "names-no-tier": ({ id }) => `there is no tier ${id}, only an earlier tier may be named`,
    "names-itself": "the tier names itself, only an earlier tier may be named",
    "names-later-tier": ({ id }) => `${id} is cut later than this tier, only an earlier tier may be named`,
    "no-such-facet": ({ id, first, last }) => `there is no facet ${id}, ${first} to ${last} allowed`,
    "too-many-facets": ({ count, most }) => `${count} facets in all are too many, at most ${most} allowed`,
    "picture-too-large": ({ width, height, most }) =>
      `the picture has ${width} by ${height} pixels, at most ${most} by ${most} allowed`,
    "pictures-too-long": ({ characters, most }) =>
      `the pictures are too large: ${characters} characters together, at most ${most} allowed`,
    "not-reckoned":
      "this plan can't be reckoned exactly: some of its facets lie so nearly in one plane that no arithmetic here tells how they meet; leave one of two nearly equal tiers out, or set them clearly apart",
    "other-format": ({ found }) => `${found}, "glintwright-plan" needed`,
    "no-version": ({ found, allowed }) => `${found} is no version number, ${allowed} allowed`,
    "newer-version": ({ found, allowed }) =>
      `the plan was written by a newer version of Glintwright (plan version ${found}), this one reads ${allowed}`,
    "no-object": ({ found }) => `the file holds ${found}, a plan (an object) is needed`,
    "file-unreadable": "the file can't be read from the disk",
    "file-too-heavy": ({ bytes, most }) => `the file is too large: ${bytes} bytes, at most ${most} allowed`,
    "file-not-text": "the file is not text in UTF-8",
    "file-too-long": ({ characters, most }) =>
      `the file is too large: ${characters} characters, at most ${most} allowed`,
    "file-empty": "the file is empty, a plan in JSON is needed",
    "too-deep": ({ most }) => `brackets are nested too deeply, at most ${most} levels allowed`,
    "json-cut-off": ({ line, column }) =>
      `the file is not valid JSON: it ends too early, at line ${line}, column ${column}`,
    "json-broken": ({ line, column }) => `the file is not valid JSON: line ${line}, column ${column}`,
    "link-damaged": "the link is damaged: part of it is missing or was changed",
    "link-too-full": "the link holds more than a plan can",
    "link-newer": "the link was made by a newer version of Glintwright, or is damaged",
    "link-too-long": ({ characters, most }) =>
      `the link is too long: ${characters} characters, at most ${most} allowed`,
    "plan-too-long-for-link": ({ characters, most }) =>
      `the plan is too large for a link: ${characters} characters, at most ${most} allowed; save it to a file`,
    "link-too-long-for-code": ({ characters, most }) =>
      `the link is too long for a QR code: ${characters} characters, at most ${most} allowed`,
    "not-in-library": "this plan is not in the library any more",
    "backup-too-large": "the backup is too large",
    "backup-no-zip": "this file is no backup of a library (a zip file is needed)",
    "backup-no-list": "this file is no backup of a library (library.json is missing)",
    "backup-list-broken": ({ place }) => `the list of plans in this backup can't be read (${place})`,
    "not-in-backup": "the file is missing in the backup",
  },
  allowed: {
    text: () => "text",
    list: () => "a list",
    object: () => "an object",
    "measured-facets": () => "an object of measured facets",
    "true-or-false": () => "true or false",
    "least-and-greatest": () => "two numbers [least, greatest]",
    colour: () => "three numbers [red, green, blue]",
    point: () => "three numbers [x, y, z]",
    glass: (words) => `${words} or an own glass {name, nd, vd, densityGcm3}`,
    picture: () => "a PNG or JPEG picture as data:image/png;base64,... or data:image/jpeg;base64,...",
    format: () => '"glintwright-plan"',
    currency: () => 'a currency in three capital letters, such as "EUR"',
    mark: () => "a picture (PNG or SVG) as a data address in base64",
    number: (range) => `a number (${range})`,
    "number-or-null": (range) => `a number (${range}) or null`,
    range: (range) => range,
    "range-or-free": (range) => `${range} (or null for a free protractor)`,
    version: (range) => range,
    word: (words) => `one of ${words}`,
    "depth-rule": (words) => `one of the depth rules ${words}`,
    design: (words) => `one of the designs ${words}`,
  },
  range: {
    any: "any finite number",
    above: (min, max) => `more than ${min}, at most ${max}`,
    whole: (min, max) => `a whole number from ${min} to ${max}`,
    between: (min, max) => `${min} to ${max}`,
  },
  nothing: "nothing",
  list: "a list",
  object: "an object",
  plan: "the plan",
  more: (count) => `(and ${count} more ${plural(count, { one: "problem", other: "problems" })})`,
};
