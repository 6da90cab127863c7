/**
 * 3MF: a zip archive (Open Packaging Conventions) of XML parts with one mesh in millimetres (3MF Core Specification 1.3,
 * 3MF Consortium). Axes as in the plan. The same plan gives the same bytes: parts carry no time of day.
 */
import { strToU8, zipSync } from "fflate";
import { escapeXml } from "./escape-xml.ts";
import type { PieceMesh } from "./piece-mesh.ts";

const CONTENT_TYPES = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`;
const RELATIONSHIPS = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;
/** Zip counts years from 1980; the second day is that in every time zone. */
const NO_TIME = "1980-01-02T00:00:00Z";

/** One mesh in one object. Coordinates carry nine digits, all that single precision holds. */
export function threeMfOf({ positions, triangles }: PieceMesh, name: string): Uint8Array<ArrayBuffer> {
  const used = new Map<number, number>();
  for (const v of triangles) if (!used.has(v)) used.set(v, used.size);
  const digits = (x: number): string => `${Number(x.toPrecision(9))}`;
  const vertices = [...used.keys()].map((v) => {
    const [x, y, z] = [0, 1, 2].map((k) => digits(positions[3 * v + k]));
    return `<vertex x="${x}" y="${y}" z="${z}"/>`;
  });
  const faces = Array.from({ length: triangles.length / 3 }, (_, i) => {
    const [a, b, c] = [0, 1, 2].map((k) => used.get(triangles[3 * i + k]));
    return `<triangle v1="${a}" v2="${b}" v3="${c}"/>`;
  });
  const model = `<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
<metadata name="Title">${escapeXml(name)}</metadata><metadata name="Application">Glintwright</metadata>
<resources><object id="1" type="model" name="${escapeXml(name)}"><mesh><vertices>
${vertices.join("\n")}
</vertices><triangles>
${faces.join("\n")}
</triangles></mesh></object></resources>
<build><item objectid="1"/></build>
</model>
`;
  return zipSync(
    {
      "[Content_Types].xml": strToU8(CONTENT_TYPES),
      "_rels/.rels": strToU8(RELATIONSHIPS),
      "3D/3dmodel.model": strToU8(model),
    },
    { mtime: NO_TIME },
  ) as Uint8Array<ArrayBuffer>;
}
