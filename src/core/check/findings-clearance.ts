/** Facets that run where they must not: under the dop, or into the design inside; and an inside that lacks its picture. */

import type { PlanFinding } from "../plan/finding.ts";
import { missingPictures } from "../plan/pictures.ts";
import { distanceToAxis, type Pole } from "./axis-distance.ts";
import type { Checked } from "./findings.ts";
import { designsToClear, reachOf } from "./inside-clearance.ts";
import { outsideMm } from "./inside-fits.ts";

/** Less glass than this over the inside is worth a look. Common practice, no source. */
const THIN_GLASS_MM = 1;

function dopFindings({ solved, solid }: Checked): PlanFinding[] {
  const { dop } = solved.plan.piece;
  if (!dop) return [];
  const pole: Pole = dop.side === "front" ? 1 : -1;
  const limit = dop.diameterMm / 2;
  return solved.tiers.flatMap((tier): PlanFinding[] => {
    const under = solid.facets.flatMap((facet, i) => {
      if (i < tier.first || i >= tier.first + tier.count) return [];
      const fromAxisMm = distanceToAxis(facet, pole) * solved.radiusMm;
      return fromAxisMm < limit - 1e-9 ? [{ i, fromAxisMm }] : [];
    });
    if (under.length === 0) return [];
    const byMm = limit - Math.min(...under.map((u) => u.fromAxisMm));
    return [
      {
        code: "under-dop",
        severity: "stop",
        tier: tier.tierId,
        facets: under.map((u) => solved.facets[u.i].id),
        data: { byMm, dopMm: dop.diameterMm, side: dop.side, fitsMm: 2 * (limit - byMm) },
      },
    ];
  });
}

function insideFindings({ solved, solid }: Checked): PlanFinding[] {
  const designs = designsToClear(solved.plan.piece);
  if (designs.length === 0) return [];
  return solved.tiers.flatMap((tier): PlanFinding[] => {
    const glass = solid.facets.flatMap((facet, i) => {
      if (i < tier.first || i >= tier.first + tier.count || facet.swallowed) return [];
      const reach = Math.max(...designs.map((d) => reachOf(d, facet.plane.n)));
      return [{ i, mm: (facet.plane.h - reach) * solved.radiusMm }];
    });
    const short = glass.filter((g) => g.mm < THIN_GLASS_MM);
    if (short.length === 0) return [];
    const leastMm = Math.min(...short.map((g) => g.mm));
    const broken = leastMm < 0;
    const limitMm = tier.depthMm + leastMm - THIN_GLASS_MM;
    return [
      {
        code: broken ? "inside-broken" : "inside-thin",
        severity: broken ? "stop" : "warn",
        tier: tier.tierId,
        facets: short.filter((g) => !broken || g.mm < 0).map((g) => solved.facets[g.i].id),
        data: {
          leastMm,
          wantedMm: THIN_GLASS_MM,
          depthMm: tier.depthMm,
          depthThatClearsMm: Math.max(0, limitMm),
        },
      },
    ];
  });
}

/** The inside reaches out of the ball: there is no glass there to hold it. */
const outsideFindings = ({ solved }: Checked): PlanFinding[] => {
  const { piece } = solved.plan;
  const byMm = Math.max(0, ...(piece.inside ?? []).map((design) => outsideMm(piece, design)));
  return byMm > 0 ? [{ code: "inside-outside", severity: "warn", data: { byMm } }] : [];
};

/** The inside names a picture that did not come along, as after a link: nothing is seen there. */
const pictureFindings = ({ solved }: Checked): PlanFinding[] =>
  missingPictures(solved.plan).map((picture) => ({
    code: "picture-missing",
    severity: "info",
    data: { picture },
  }));

export const clearanceFindings = (checked: Checked): PlanFinding[] => [
  ...dopFindings(checked),
  ...insideFindings(checked),
  ...outsideFindings(checked),
  ...pictureFindings(checked),
];
