/** Models of the piece, true-size drawings, and a link that carries the plan. Made on this device, handed to the browser to keep. */
import { useMemo, useState } from "react";
import { BrokenMesh } from "../../core/geometry/broken-mesh.ts";
import { glbOf } from "../../core/models/glb.ts";
import { notShownCodes } from "../../core/models/not-shown.ts";
import { outlinesSvg } from "../../core/models/outlines-svg.ts";
import { pieceMesh } from "../../core/models/piece-mesh.ts";
import { skinSvg } from "../../core/models/skin-svg.ts";
import { stlOf } from "../../core/models/stl.ts";
import { threeMfOf } from "../../core/models/three-mf.ts";
import { usdzOf } from "../../core/models/usdz.ts";
import type { Plan } from "../../core/plan/document.ts";
import { PlanFileError } from "../../core/plan/file.ts";
import { fragmentOf, qrCodeOf } from "../../core/plan/link.ts";
import { solid, solved } from "../../state/derived.ts";
import { Button } from "../controls/Button.tsx";
import { libraryWords } from "../messages/library.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { fileNameOf, offerFile } from "../shared/files.ts";
import { canHandOver, handOver } from "../shared/hand-over.ts";
import { useStudio } from "../use-studio.ts";
import "./library.css";

/** Units of a model's file, in millimetres: 3D printing works in mm, glTF in metres. */
const MILLIMETRES = 1;
const METRES = 1000;

type ModelName = "stl" | "threeMf" | "glb" | "usdz" | "skin" | "outlines";
interface Model {
  readonly name: ModelName;
  readonly ending: string;
  readonly type: string;
  readonly make: (plan: Plan) => Uint8Array<ArrayBuffer> | string;
}

const MODELS: readonly Model[] = [
  {
    name: "stl",
    ending: ".stl",
    type: "model/stl",
    make: (plan) => stlOf(pieceMesh(solved(plan), MILLIMETRES), plan.name),
  },
  {
    name: "threeMf",
    ending: ".3mf",
    type: "model/3mf",
    make: (plan) => threeMfOf(pieceMesh(solved(plan), MILLIMETRES), plan.name),
  },
  {
    name: "glb",
    ending: ".glb",
    type: "model/gltf-binary",
    make: (plan) => glbOf(pieceMesh(solved(plan), METRES), solved(plan)),
  },
  {
    name: "usdz",
    ending: ".usdz",
    type: "model/vnd.usdz+zip",
    make: (plan) => usdzOf(pieceMesh(solved(plan), METRES), solved(plan)),
  },
  {
    name: "skin",
    ending: "-skin.svg",
    type: "image/svg+xml",
    make: (plan) => skinSvg(solved(plan), solid(plan)),
  },
  {
    name: "outlines",
    ending: "-facets.svg",
    type: "image/svg+xml",
    make: (plan) => outlinesSvg(solved(plan), solid(plan)),
  },
];

/** The file, or null when no sound model can be made: a broken one is never handed over. */
function fileOf({ make, type }: Model, plan: Plan): Blob | null {
  try {
    return new Blob([make(plan)], { type });
  } catch (error) {
    if (error instanceof BrokenMesh) return null;
    throw error;
  }
}

function ModelsPart({ plan }: { plan: Plan }) {
  const words = useWords(libraryWords).models;
  const [refused, refuse] = useState<Plan | null>(null);
  const isVanished = solid(plan).vanished;
  const stem = fileNameOf(plan).replace(/\.glintwright\.json$/, "");
  const save = (model: Model): void => {
    const file = fileOf(model, plan);
    refuse(file === null ? plan : null);
    if (file !== null) offerFile(`${stem}${model.ending}`, file);
  };
  return (
    <section>
      <h2>{words.title}</h2>
      <p className="soft">{isVanished ? words.vanished : words.intro}</p>
      <ul className="model-list">
        {MODELS.map((model) => (
          <li key={model.name}>
            <Button look="outlined" isDisabled={isVanished} onPress={() => save(model)}>
              {words[model.name]}
            </Button>
          </li>
        ))}
      </ul>
      <p role="status">{refused === plan ? words.broken : null}</p>
    </section>
  );
}

type RoomModel = "usdz" | "glb";
const ROOM_MODELS: readonly RoomModel[] = ["usdz", "glb"];

/** Whether a link to a USDZ file opens in the room (WebKit's `rel=ar`). */
const opensInRoom = (): boolean => document.createElement("a").relList.supports?.("ar") ?? false;

/** Opens a USDZ in the room: the browser takes a link to it that holds a picture. */
function openInRoom(file: Blob): void {
  const link = document.createElement("a");
  link.rel = "ar";
  link.href = URL.createObjectURL(file);
  link.append(document.createElement("img"));
  link.click();
  // kept until the room is left: the file is read when it opens
  window.addEventListener("focus", () => URL.revokeObjectURL(link.href), { once: true });
}

/** Hands a model to what a phone has on board, and says what its format can't show. */
function RoomPart({ plan }: { plan: Plan }) {
  const words = useWords(libraryWords).models;
  const language = useLanguage();
  const [trouble, setTrouble] = useState<string | null>(null);
  const stem = fileNameOf(plan).replace(/\.glintwright\.json$/, "");
  const modelOf = (name: RoomModel) => MODELS.find((model) => model.name === name) as Model;
  const handable = ROOM_MODELS.filter((name) => canHandOver(`${stem}.${name}`, modelOf(name).type));
  const withFile = async (name: RoomModel, deed: (file: Blob) => unknown) => {
    setTrouble(null);
    const file = fileOf(modelOf(name), plan);
    if (file === null) {
      setTrouble(words.broken);
      return;
    }
    try {
      await deed(file);
    } catch (error) {
      setTrouble(words.notHanded(error instanceof Error ? error.message : String(error)));
    }
  };
  const lacks = (name: RoomModel) =>
    new Intl.ListFormat(language).format(notShownCodes(name, plan).map((code) => words.lacks[code]));
  if (solid(plan).vanished) return null;
  return (
    <section>
      <h2>{words.room}</h2>
      <p className="soft">{words.roomWhat}</p>
      <ul className="model-list">
        {opensInRoom() ? (
          <li>
            <Button look="strong" onPress={() => void withFile("usdz", openInRoom)}>
              {words.stand}
            </Button>
          </li>
        ) : null}
        {handable.map((name) => (
          <li key={name}>
            <Button
              look="outlined"
              onPress={() => void withFile(name, (file) => handOver(`${stem}.${name}`, file))}
            >
              {words.hand[name]}
            </Button>
          </li>
        ))}
      </ul>
      {handable.length === 0 && !opensInRoom() ? <p className="soft">{words.cannotHand}</p> : null}
      <p className="soft">{words.usdzLacks(lacks("usdz"))}</p>
      <p className="soft">{words.glbLacks(lacks("glb"))}</p>
      {trouble ? <p role="alert">{trouble}</p> : null}
    </section>
  );
}

/** The link, or null when the plan is too long for one. */
function linkOf(plan: Plan): string | null {
  try {
    return `${location.origin}${location.pathname}#${fragmentOf(plan)}`;
  } catch (error) {
    if (error instanceof PlanFileError) return null;
    throw error;
  }
}

function codeOf(link: string) {
  try {
    return qrCodeOf(link);
  } catch (error) {
    if (error instanceof PlanFileError) return null;
    throw error;
  }
}

function LinkPart({ plan }: { plan: Plan }) {
  const words = useWords(libraryWords).models;
  const link = useMemo(() => linkOf(plan), [plan]);
  const code = useMemo(() => (link === null ? null : codeOf(link)), [link]);
  const [said, say] = useState<string | null>(null);
  const copy = () => {
    if (link === null) return;
    const asked = navigator.clipboard?.writeText(link) ?? Promise.reject(new Error("no clipboard"));
    asked.then(
      () => say(words.copied),
      () => say(words.notCopied),
    );
  };
  return (
    <section>
      <h2>{words.linkTitle}</h2>
      <p className="soft">{link === null ? words.tooLong : words.linkIntro}</p>
      {link === null ? null : (
        <>
          {Object.keys(plan.pictures ?? {}).length > 0 ? <p>{words.linkDropsPictures}</p> : null}
          <label className="field-label" htmlFor="plan-link">
            {words.address}
          </label>
          <textarea
            id="plan-link"
            className="link-text"
            readOnly
            value={link}
            onFocus={(e) => e.currentTarget.select()}
          />
          <Button look="outlined" onPress={copy}>
            {words.copy}
          </Button>
          <span role="status">{said}</span>
          {code ? (
            <svg
              className="link-code"
              viewBox={`0 0 ${code.size} ${code.size}`}
              role="img"
              aria-label={words.qr}
            >
              <rect width={code.size} height={code.size} fill="#fff" />
              <path d={code.path} fill="#000" />
            </svg>
          ) : (
            <p className="small">{words.qrTooLong}</p>
          )}
        </>
      )}
    </section>
  );
}

export default function ModelsSheet() {
  const plan = useStudio((state) => state.plan);
  return (
    <>
      <ModelsPart plan={plan} />
      <RoomPart plan={plan} />
      <LinkPart plan={plan} />
    </>
  );
}
