import type { ideas as en } from "../en/ideas.ts";
import type { Translated } from "../language.ts";
import { counted, plural } from "./counted.ts";

const inRings = (count: number): string => plural(count, { one: "1 Ring", other: `${count} Ringen` });

export const ideas: Translated<typeof en> = {
  title: "Ideen",
  intro:
    "Sag, wie das Stück sein soll. Viele Muster werden für dein Glas und dein Rad versucht; das beste jeder Art kommt an die Wand. Alle treffen sich.",
  wish: {
    work: "{on}, {wheel}: {least} bis {tiers} Ringe mit höchstens {facets} Facetten, {sides}, in {hours} Stunden an der Scheibe.",
    want: "Vor allem soll es {want}; und {also}.",
    axes: "Die Wand entlang: {across}. Die Wand hinauf: {up}.",
    keep: "Die ersten {keep} Ringe dieses Plans bleiben, wie sie sind.",
    given: {
      open: "Eine Wunschdatei öffnen",
      opened: (file: string) => `Der Wunsch aus ${file} steht über der Wand`,
      unknown: (fields: string) => `Nicht verstanden und ohne Wirkung: ${fields}`,
      title: (file: string) => `Ein Wunsch aus der Datei ${file}, wie er dort steht:`,
      work: (on: string, wheel: string, tiers: string, facets: string, sides: string) =>
        `${on}, ${wheel}: ${tiers} Ringe mit ${facets} Facetten, ${sides}.`,
      between: (least: string, most: string) => (least === most ? least : `${least} bis ${most}`),
      keep: (count: number) =>
        count === 1
          ? "Sein erster Ring bleibt, wie er ist."
          : `Seine ersten ${count} Ringe bleiben, wie sie sind.`,
      rings: "Es genügt, dass jeder Ring sich in sich schließt.",
      limits: (list: string) => `In diesen Grenzen: ${list}.`,
      wants: (list: string) =>
        `Gewünscht, je mit seinem Gewicht von \u22121 (so wenig wie möglich) bis 1 (so viel wie möglich): ${list}.`,
      wantsNothing: "Nichts ist mehr gewünscht als anderes.",
      weight: (name: string, weight: string) => `${name} ${weight}`,
      axes: (across: string, up: string) => `Die Wand entlang: ${across}. Die Wand hinauf: ${up}.`,
      own: "Wieder selbst einen Wunsch sagen",
    },
    gave: {
      all: (what: string) =>
        `Um nah bei dem zu bleiben, womit sie begann, gelten für diese Wand andere Grenzen: ${what}.`,
      leastTiers: (held: string, asked: string) => `mindestens ${held} Ringe statt ${asked}`,
      mostTiers: (held: string, asked: string) => `bis zu ${held} Ringe statt ${asked}`,
      leastFacets: (held: string, asked: string) => `mindestens ${held} Facetten statt ${asked}`,
      mostFacets: (held: string, asked: string) => `bis zu ${held} Facetten statt ${asked}`,
      leastTime: (held: string, asked: string) => `ab ${held} Stunden statt ${asked}`,
      mostTime: (held: string, asked: string) => `bis zu ${held} Stunden statt ${asked}`,
    },
    on: (diameter: string) => `Auf dieser Murmel von ${diameter}`,
    wheel: (stops: string) => `mit meinem Rad von ${stops}`,
    noWheel: "mit freiem Winkelmesser",
    leastTiers: "Ringe mindestens",
    tiers: "Ringe höchstens",
    facets: "Facetten höchstens",
    hours: "Stunden höchstens",
    keepLabel: "Ringe, die bleiben",
    sidesLabel: "Seiten",
    sides: { front: "nur vorn", both: "vorn und hinten" },
    wantLabel: "Vor allem",
    alsoLabel: "Und",
    acrossLabel: "Die Wand entlang",
    upLabel: "Die Wand hinauf",
    whole: (least: string, most: string) => `eine ganze Zahl von ${least} bis ${most}`,
  },
  want: {
    nothing: "sonst nichts",
    sparkle: "in Bewegung funkeln",
    back: "Licht zum Auge zurückwerfen",
    through: "hindurchsehen lassen",
    inside: "sein Inneres zeigen",
    round: "viel runde Haut behalten",
    covered: "ganz mit Facetten bedeckt sein",
    large: "keine kleine Facette haben",
    quick: "schnell fertig sein",
  },
  axis: {
    minutes: "Zeit an der Scheibe",
    facets: "Zahl der Facetten",
    tiers: "Zahl der Ringe",
    leastFacetMm: "kleinste Facette",
    skinShare: "runde Haut, die bleibt",
    back: "zurückgeworfenes Licht",
    through: "Durchsicht",
    inside: "Inneres zu sehen",
    images: "Bilder des Inneren",
    sparkle: "Funkeln",
  },
  start: "Muster versuchen",
  further: "Weiter versuchen",
  stop: "Anhalten",
  trying: (tried: string, found: string) => `${tried} Muster versucht, ${found} an der Wand`,
  done: (tried: string, meeting: string, found: string) =>
    `${tried} Muster versucht; ${meeting} davon treffen sich, und die besten ${found} hängen an der Wand.`,
  stopped: (tried: string, found: string) =>
    `Angehalten nach ${tried} versuchten Mustern. Die ${found} an der Wand bleiben.`,
  trouble: (why: string) => `Die Suche brach ab: ${why}`,
  nothing: (what: string) => `Kein Muster erfüllt diesen Wunsch. Im Weg: ${what}.`,
  way: {
    meets: "dass alle Ringe sich treffen",
    limit: (name: string, share: string) => `${name} (${share} des Versuchten)`,
    limitOfMeeting: (name: string, share: string) => `${name} (${share} derer, die sich treffen)`,
    never: (name: string) =>
      `${name}, die nichts mit allem anderen zusammen einhält; darum wurde nichts versucht`,
    tiers: "die Zahl der Ringe",
    facets: "die Zahl der Facetten",
  },
  wall: "Die Wand",
  empty: "Von dieser Art noch nichts",
  axisPart: (name: string, part: string) => `${name}: ${part}`,
  axisAcross: (name: string) => `${name} →`,
  one: {
    title: "Diese hier",
    time: (hours: string, facets: number, tiers: number) =>
      `Etwa ${hours} Stunden an der Scheibe: ${counted.facets(facets)} in ${inRings(tiers)}.`,
    timeUnknown: (facets: number, tiers: number) => `${counted.facets(facets)} in ${inRings(tiers)}.`,
    skin: (share: string, least: string) =>
      `${share} der runden Haut bleiben; die kleinste Facette ist ${least} breit.`,
    light: (back: string, through: string) =>
      `Von seinem Gesicht werfen ${back} Licht zurück, und durch ${through} sieht man hindurch.`,
    inside: (share: string, images: number) =>
      `Was innen ist, füllt ${share} seines Gesichts, als ${plural(images, { one: "ein Bild", other: `${images} Bilder` })}.`,
    sparkle: (share: string) =>
      `Mit jedem Grad, den es sich neigt, gehen ${share} seines Gesichts an oder aus.`,
    counted:
      "Gezählt auf einem Raster von 96 mal 96 Strahlen aus der Ferne, also auf einige Hundertstel genau.",
    measuring: "Wird gemessen",
    tier: (count: string, angle: string, side: string) => `${count} bei ${angle} ${side}`,
    sides: { front: "vorn", back: "hinten" },
  },
  deeds: {
    take: "Als meinen Plan öffnen",
    taken: "Das ist jetzt dein Plan. Rückgängig bringt den vorigen zurück.",
    takenWhole:
      "Das ist jetzt dein Plan, mit der Murmel und dem Rad, für die es gemacht war. Rückgängig bringt den vorigen zurück.",
    front: "Nur die Zahlen vorn bleiben",
    away: "Wegwerfen",
    between: "Zwischen den beiden zuletzt festgehaltenen",
    customer: "Einem Kunden zeigen",
    hold: "Festhalten",
    letGo: "Loslassen",
    more: "Mehr davon",
    shelf: "Ins Regal stellen",
    shelved: "Bei deinen Plänen aufgehoben.",
    beside: "Neben meinen Plan legen",
    failed: "Es konnte nicht aufgehoben werden; verloren ist nichts.",
  },
  pick: "Ein Druck auf ein Bild zeigt, was es ist und was sich damit machen lässt.",
  nearest: "So lässt sich das nicht beheben. Ähnliche Muster suchen, die sich treffen",
  bringBack: (count: number) =>
    plural(count, { one: "Das Weggeworfene zurückholen", other: `Die ${count} Weggeworfenen zurückholen` }),
  lean: "Im Vorbeigehen gesehen",
  leanUntraced:
    "Wie es im Vorbeigehen aussieht, braucht durchgerechnete Bilder, die hier gerade nicht gehen.",
  leanAll: "Alle neigen sich zusammen",
  leanBy: (deg: string) => `${deg}°`,
  leaning: (done: number, of: number) => `${done} von ${of} Bildern`,
  taste: {
    title: "In der Folge, die dir gefallen könnte",
    what: (count: number) =>
      `Gelernt aus ${count} Ideen, die du festgehalten oder weggeworfen hast, nur auf diesem Gerät. Es ändert allein diese Folge.`,
    few: (count: number) =>
      `${plural(count, { one: "Eine Idee", other: `${count} Ideen` })} bisher festgehalten oder weggeworfen. Ab je dreien liegt die Wand auch in der Folge da, die dir gefallen könnte; das bleibt auf diesem Gerät.`,
    later: "Sobald eine Suche zu Ende ist.",
    forget: "Vergessen, was mir gefällt",
  },
  measures: {
    title: "Was gezählt wird, und wie",
    how: "Was man sieht, wird gezählt, indem 96 mal 96 gerade Strahlen einer Farbe durch das polierte Glas verfolgt werden, für jemanden, der weit weg steht: genau für jeden Strahl, eine Zählung auf einem Raster für das Ganze. Alles andere kommt aus der genauen Form.",
    minutes:
      "Stunden für die ganze Arbeit in der schnelleren Folge, aus den Zeiten der Werkbank: geschätzt, solange Hübe nicht geeicht sind.",
    facets: "Wie viele Facetten zu schleifen sind, ein Pol als eine gezählt.",
    tiers: "Wie viele Ringe einzustellen sind, jeder mit einem eigenen Winkel; auch ein Pol ist einer.",
    leastFacetMm: "Die Breite der schmalsten Facette: die ein Ausrutscher zuerst nimmt.",
    skinShare: "Wie viel von der runden Haut der Kugel bleibt.",
    back: "Der Anteil des Gesichts, der Licht von der Seite des Auges zurückwirft, im Mittel von neun Neigungen; eine Zählung auf dem Raster.",
    through:
      "Der Anteil des Gesichts, durch den man sieht, was dahinter liegt, im Mittel von neun Neigungen; eine Zählung auf dem Raster.",
    inside:
      "Der Anteil des Gesichts, in dem man sieht, was im Glas ist, im Mittel von neun Neigungen; eine Zählung auf dem Raster.",
    images:
      "Wie viele getrennte Bilder des Inneren man gerade von vorn sieht; eine Zählung von Flecken auf dem Raster.",
    sparkle:
      "Wie viel des Gesichts mit jedem Grad Neigung hell oder dunkel wird, unter zwölf Lampen ringsum; eine Zählung auf dem Raster.",
    eyes: "Verglichen mit vier blinden Rangfolgen von 24 durchgerechneten Stücken (von Programmen, die Bilder lesen, noch nicht von Menschen), als Rangkorrelation mit dem Bereich, in dem sie 19 von 20 Malen liegt: Inneres zu sehen 0,98 (0,94 bis 0,99), zurückgeworfenes Licht 0,97 (0,92 bis 0,99), Durchsicht 0,95 (0,86 bis 0,98), Funkeln 0,87 (0,67 bis 0,95), Bilder des Inneren nur 0,36 (−0,07 bis 0,67), was Zufall sein kann: darum lässt sich die Wand nach ihnen ordnen, aber wünschen kann man sie nicht. Die anderen Maße gelten Form und Arbeit, keines davon dem Auge.",
  },
  held: "Festgehalten, nebeneinander in einem Licht",
  heldUnkept:
    "Dieser Browser hat keinen Platz für das Festgehaltene oder hebt es nicht auf: es bleibt, bis die Seite verlassen wird. Stell ins Regal, was bleiben soll.",
  undrawn: "Bilder lassen sich hier gerade nicht durchrechnen; Zeichnungen stehen für sie.",
  name: (name: string, number: string) => (name ? `${name}, Idee ${number}` : `Idee ${number}`),
  ring: (number: string) => `Ring ${number}`,
  pole: "Pol",
};
