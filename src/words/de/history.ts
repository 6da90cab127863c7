import type { history as en } from "../en/history.ts";
import type { Translated } from "../language.ts";
import { counted } from "./counted.ts";

export const history: Translated<typeof en> = {
  about: {
    name: "Name des Plans",
    notes: "Notizen",
    tolerance: "was als Treffen gilt",
    "replace-plan": "der ganze Plan",
    "add-tier": (tier) => `Reihe ${tier} angefügt`,
    "remove-tier": (tier) => `Reihe ${tier} gelöscht`,
    "duplicate-tier": (tier) => `Reihe ${tier} verdoppelt`,
    "move-tier": (tier) => `Platz von Reihe ${tier}`,
    tier: (tier) => `Reihe ${tier}`,
    tierField: (field, tier) => `${field} von Reihe ${tier}`,
    piece: "das Stück",
    rig: "Rad und Arm",
    field: "ein Eintrag",
    severalTiers: "Änderungen an mehreren Reihen",
    mends: {
      "as-cut": "Wie geschliffen festhalten",
      "follow-cut": "Dem folgen, was geschliffen ist",
      photo: "ein Foto im Inneren",
    },
  },
  tierFields: {
    name: "Name",
    side: "Seite",
    armAngleDeg: "Winkel",
    count: "Anzahl",
    startDeg: "Anfang",
    depth: "Tiefe",
    finish: "Schliff",
    asCut: "Messung",
  },
  partFields: {
    offer: "was dafür verlangt wird",
    maker: "wer es gemacht hat",
    showing: "Worte für einen Kunden",
  },
  pieceFields: {
    diameterMm: "Durchmesser",
    otherDiametersMm: "weitere Durchmesser",
    glass: "Glas",
    tint: "Farbe des Glases",
    cased: "Glasschichten",
    seeds: "kleine Blasen",
    waviness: "Welligkeit der Haut",
    inside: "das Innere",
    dop: "Kittstock",
    inkMarkDeg: "Tintenstrich",
  },
  rigFields: {
    wheelStops: "Rasten am Rad",
    arm: "Arm",
    lap: "Scheibe",
    stages: "Stufen",
    setUps: "Aufspannungen",
  },
  noteReference: (tier, named, depth) =>
    `${tier} richtete sich nach ${named}, die nicht mehr davor geschliffen wird. Die Tiefe von ${depth} bleibt.`,
  noteMeasured: (tier, facets) =>
    `${tier}: Messungen von ${counted.facets(facets)}, die es nicht mehr gibt, sind entfallen.`,
  noteRefused: (why) => `Der Plan kann das nicht aufnehmen und bleibt, wie er ist: ${why}.`,
  noteHistory:
    "Schritte eines früheren Besuchs passen nicht mehr zu diesem Plan und wurden beiseite gelegt. Der Plan ist unverändert.",
};
