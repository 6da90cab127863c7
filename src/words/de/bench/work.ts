/** Words of the work in its order: ways through it, strokes, time, tests of a disc. */
import type { work as en } from "../../en/bench/work.ts";
import type { Translated } from "../../language.ts";
import { counted, lostPairs, plural } from "../counted.ts";

export const work: Translated<typeof en> = {
  work: {
    before: "Vor dem ersten Schliff",
    showGuesses: "Hübe als grobe Schätzung zeigen, wo nichts geeicht ist",
    tierLine: (count, angle, side) => `${counted.facets(count)} bei ${angle} auf der ${side}`,
    noRig: (finished) =>
      `${finished} Trag unter Einrichten Arm und Scheibe ein, dann kommen Drehpunkthöhe und Reichweite dazu.`,
    pivot: (height, arm, radius) =>
      `Drehpunkt ${height} über der Schleiffläche, Arm auf ${arm}: Die Facette liegt ${radius} von der Scheibenmitte.`,
    tipsUp: (touch, end) =>
      `Der Arm zeigt bei der ersten Berührung ${touch} nach oben und neigt sich ${end}, wenn die Facette fertig ist.`,
    dips: (touch, end) =>
      `Der Arm neigt sich ${touch} bei der ersten Berührung und ${end}, wenn die Facette fertig ist.`,
    noTouch:
      "In dieser Höhe kann der Arm auf der runden Murmel nicht aufliegen: Beginn höher und komm herunter.",
    speed: (ms) => `Die Fläche läuft mit ${ms} m/s vorbei.`,
    perDegree: (mm) => `Ein Grad Armwinkel ist hier ${mm} Drehpunkthöhe.`,
    againCosts: (deg, mm) => `Um ${deg} daneben wiedergefunden, kostet eine saubere Fläche ${mm} mehr Tiefe.`,
    againEdge: (mm, longer) => `Gemeinsame Kanten werden ${mm} ${longer ? "länger" : "kürzer"}.`,
    againGap: (mm, wider) => `Lücken werden ${mm} ${wider ? "weiter" : "enger"}.`,
    againMiss: (mm) => `Ecken gehen bis zu ${mm} auseinander.`,
    againLost: (pairs) => (pairs === 0 ? "Alles, was sich traf, trifft sich noch." : lostPairs(pairs)),
    finish: "Diese Reihe bleibt",
    endsHere: (finish) => `Das letzte hier: Diese Reihe bleibt ${finish}.`,
    notHere: (finish) => `Nicht an dieser Reihe: Sie bleibt ${finish}.`,
    stopAt: (mm) => `Aufhören bei ${mm} Breite.`,
    whileGround: (widths) =>
      `Beim Schleifen hat die erste Facette noch keine Nachbarin: ${widths} der Reihe nach.`,
    whileGroundMany: (first, last) =>
      `Beim Schleifen von ${first} an der ersten bis ${last} an der letzten Facette; jede Raste sagt unten ihre eigene.`,
    takenAlready: "Lass diese Stufe aus: In dieser Tiefe haben frühere Reihen schon alles weggenommen.",
    stopTaken: "hier ist nichts mehr",
    skip: "Lass dieses aus: Es würde tiefer schädigen, als die Reihe geht.",
    polishEnds: "Bis unter der Lupe, schräg gegen eine Lampe, kein Grau mehr zu sehen ist.",
    notCalibrated: "Hübe nicht geeicht: Geh nach der Breite.",
    strokes: (n) => plural(n, { one: "Etwa 1 Hub.", other: `Etwa ${n} Hübe.` }),
    strokesRange: (least, most) => `Etwa ${least} bis ${most} Hübe je Facette.`,
    guess: (said) => `Geschätzt: ${said.charAt(0).toLowerCase()}${said.slice(1)}`,
    atStage: "Anschauen",
    pieceAfter: (tier, stage) => `Das Stück nach ${stage} an ${tier}`,
    pieceAfterCaption: "Das Stück nach dieser Stufe",
    stops: (stage) => `Raste für Raste, ${stage}`,
    readings: (stage) => `Ablesung für Ablesung, ${stage}`,
    facetAt: (k) => `Facette ${k}: `,
    plotOf: (tier, from, to, strokes) =>
      `Breite gegen Hübe an der ersten Facette von ${tier}: von ${from} auf ${to} in etwa ${strokes} Hüben, anfangs rasch, dann immer langsamer.`,
    plotCaption:
      "Breite gegen Hübe an der ersten Facette. Die Hälfte der Hübe macht den größten Teil der Breite.",
    plotGuess: "Breite gegen Hübe an der ersten Facette. Die Zahl der Hübe ist geschätzt, die Form nicht.",
  },
  ways: {
    title: "In welcher Folge",
    "finish-each": "Jede Reihe fertig machen",
    "rough-all": "Alles grob, dann zurück",
    costs: (discs, arms, time) =>
      `${counted.discChanges(discs)}, der Arm ${plural(arms, { one: "einmal", other: `${arms}-mal` })} gestellt, etwa ${time}.`,
    turns: (n) =>
      plural(n, { one: "Das Stück wird einmal umgedreht.", other: `Das Stück wird ${n}-mal umgedreht.` }),
    finishWhy:
      "Jede Stufe einer Reihe, bevor der Arm sich bewegt: Ein nach Auge gestellter Winkel lässt sich nicht zweimal gleich stellen.",
    roughWhy: "Weniger Scheibenwechsel, aber jeder Winkel muss für jede Stufe wiedergefunden werden.",
    timeIsGuess: "Die Zeit ist geschätzt, bis Hübe geeicht sind.",
    again: "Einen Winkel wiederfinden",
    againOff: "Er kommt wieder auf",
    againOffHow:
      "Ein halbes Grad genau ist übliche Praxis, ohne Quelle. Jede Reihe unten sagt, was das kostet.",
    both: (way, discs, time) => `${way}: ${counted.discChanges(discs)}, etwa ${time}.`,
  },
  finishes: { ground: "geschliffen", prepolished: "vorpoliert", polished: "poliert" },
  habits: {
    title: "Wie lange alles bei dir dauert",
    usual:
      "Minuten nach üblicher Praxis, ohne Quelle. Ändere, was bei dir anders ist; es wird im Plan aufgehoben.",
    own: "Deine eigenen Minuten, im Plan aufgehoben. Der Rest ist übliche Praxis, ohne Quelle.",
    back: "Zurück zu den üblichen",
    usually: (n) => `Üblich ${n}`,
    minutes: "min",
    seconds: "s",
    prepareMin: "Vor dem ersten Schliff",
    setArmMin: "Arm stellen",
    findAngleMin: "Winkel wiederfinden",
    discMin: "Scheibe wechseln",
    cleanMin: "Säubern zwischen Körnungen",
    indexMin: "Zur nächsten Raste drehen",
    inspectMin: "Eine Politur ansehen",
    measureMin: "Eine Reihe messen",
    turnOverMin: "Stück umdrehen",
    strokeSeconds: "Ein Hub",
  },
  findAgain: {
    "set-pivot-height": "Stell den Drehpunkt auf die Höhe, die du notiert hast.",
    "ink-facet": "Färb die ganze Fläche mit einem Stift ein und lass sie trocknen.",
    "touch-lightly": "Berühr die laufende Scheibe leicht, ein Hub, nass.",
    "read-ink": "Farbe bleibt zum Pol hin: Der Arm steht zu flach. Farbe bleibt zum Äquator hin: zu steil.",
    "adjust-height": "Rück den Drehpunkt ein wenig: höher ist steiler, tiefer ist flacher.",
    "repeat-until-even": "Wiederhol es, bis die Farbe gleichmäßig weggeht.",
  },
  time: {
    minutes: counted.minutes,
    hours: counted.hours,
    both: (h, min) => `${h} h ${min} min`,
  },
  preparations: {
    "choose-dop":
      "Nimm einen Kittstock, etwas weniger als halb so breit wie das Stück, damit keine Facette darunter läuft.",
    "clean-and-cement": "Glas und Kittstock säubern, kitten, ganz aushärten lassen.",
    "centre-and-check-run-out":
      "Dreh das Stück gegen einen Zeiger: richten, bis es kaum mehr kreist, und den Schlag notieren.",
    "mark-stop-zero": "Zieh bei Raste 0 einen Strich auf die Haut.",
    "look-for-stress":
      "Schau durch gekreuzte Polfilter: Helle Streifen heißen Spannung. Entspannen oder ein anderes Stück nehmen.",
    "warm-slowly": "Bring Glas und Kitt langsam auf dieselbe Wärme.",
    "test-facet-on-scrap":
      "Schleif eine Probefacette an einem Rest desselben Glases, zähl die Hübe, miss die Breite: Das eicht.",
  },
  calibrate: {
    title: (stage) => `${stage} an einer Probefacette eichen`,
    what: "Schleif eine Facette mit deiner gewohnten Hand und zähl mit. Ein Hub nimmt jedes Mal etwa gleich viel Glas, eine Probe sagt also alle anderen.",
    strokes: "Hübe",
    width: "Machten sie so breit",
    from: "Vorher war sie",
    diameter: "Auf einer Kugel von",
    disc: "Hübe der Scheibe vorher",
    how: {
      strokes: "Wie du sie zählst",
      width: "Auf der runden Haut, ohne Nachbarinnen",
      from: "Leer: ungeschliffen",
      diameter: "Leer: wie das Stück",
      disc: "Leer: Sie war neu",
    },
    onDisc: (n) => `Die Scheibe hatte vorher ${counted.strokes(n)} hinter sich.`,
    nowOnDisc: "Hübe der Scheibe bis jetzt",
    nowOnDiscHow: (n) => `Leer: ${n}, wie nach der letzten Probe`,
    wear: (half) => `Die Scheibe stumpft ab: Alle ${half} Hübe nimmt sie halb so viel.`,
    noWear: "Zwischen diesen Proben zeigt sich kein Abstumpfen.",
    wearHow:
      "Scheiben stumpfen ab. Prob sie wieder, wenn sie älter ist, und sag, wie viele Hübe sie hinter sich hatte: Die Hübe folgen. Dass es in gleichen Schritten halb so viel wird, ist eine Faustregel ohne Quelle.",
    resultNow: (mm3) => `So wie sie jetzt ist, nimmt ein Hub etwa ${mm3} mm³ in der Mitte des Bandes.`,
    odd: "Die Facette kann nicht schmaler geworden sein und nicht breiter als ihre Kugel.",
    add: "Diese Probe behalten",
    forget: "Vergessen",
    test: (n, from, to, ball) => `${counted.strokes(n)}: von ${from} auf ${to} an einer Kugel von ${ball}.`,
    result: (mm3) => `Ein Hub nimmt etwa ${mm3} mm³ in der Mitte des Bandes.`,
    oneTest: "Aus einer Probe; eine zweite zeigt, wie weit du streust.",
    twoTests: "Eine dritte Probe zeigt, wie weit du streust.",
    spread: (percent) => `Deine Proben streuen um ${percent} %.`,
  },
};
