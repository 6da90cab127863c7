/** The column beside the traced piece: how it is lit and shown, or the recipe, so that an edit shows in the glass at once. */
import { useState } from "react";
import { Pick } from "../controls/Pick.tsx";
import { lookWords } from "../messages/look.ts";
import { useWords } from "../messages/words.tsx";
import { Recipe } from "../plan/recipe/Recipe.tsx";
import { GlassPart } from "../settings/GlassPart.tsx";
import { InsidePart } from "../settings/InsidePart.tsx";
import { CompareFields } from "./CompareFields.tsx";
import { LightFields } from "./LightFields.tsx";
import { PieceFields } from "./PieceFields.tsx";
import { SavePicture } from "./SavePicture.tsx";
import { TableFields } from "./TableFields.tsx";
import { WalkStrip } from "./WalkStrip.tsx";
import "./look.css";

type Column = "see" | "recipe";

export default function LookPage() {
  const words = useWords(lookWords);
  const [column, setColumn] = useState<Column>("see");
  return (
    <div className="look-page">
      <Pick
        label={words.column}
        labelUnseen
        value={column}
        options={[
          { id: "see", words: words.see },
          { id: "recipe", words: words.recipe },
        ]}
        onChange={setColumn}
      />
      {column === "recipe" ? (
        <Recipe />
      ) : (
        <div className="look-parts">
          <LightFields />
          <TableFields />
          <PieceFields />
          <GlassPart />
          <InsidePart />
          <CompareFields />
          <WalkStrip />
          <SavePicture />
        </div>
      )}
    </div>
  );
}
