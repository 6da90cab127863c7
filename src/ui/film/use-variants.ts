/** What is on the sheet of variants, never more than it takes; the window keeps it, whichever plan lies on the bench. */
import { GLASS_NAMES } from "../../core/optics/glasses.ts";
import { LIGHT_NAMES } from "../../core/optics/light-settings.ts";
import { packPlans, unpackPlans } from "../ideas/wall-shelf.ts";
import { useOutlasting } from "../shared/use-outlasting.ts";
import { MOST_VARIANTS, type Variant } from "./draw-variants.ts";

interface Listed extends Variant {
  readonly key: number;
}

/** A variant without its plan. */
type Told = Omit<Listed, "plan">;

const isTold = (data: unknown): data is Told => {
  const { key, name, look } = (data ?? {}) as Partial<Told>;
  if (!Number.isInteger(key) || typeof name !== "string" || typeof look !== "object") return false;
  const { glass, light } = look ?? {};
  const hasGlass = glass === undefined || GLASS_NAMES.some((one) => one === glass);
  return hasGlass && (light === undefined || LIGHT_NAMES.some((one) => one === light));
};

const NONE: readonly Listed[] = [];

/** The list as the window keeps it: what several of its plans share stands once. */
const writeList = (list: readonly Listed[]) => ({
  told: list.map(({ plan: _, ...told }) => told),
  plans: packPlans(list.map(({ plan }) => plan)),
});

function readList(data: unknown): readonly Listed[] | null {
  const { told, plans } = (data ?? {}) as { readonly told?: unknown; readonly plans?: unknown };
  if (!Array.isArray(told)) return null;
  const found = unpackPlans(plans);
  return told.slice(0, MOST_VARIANTS).flatMap((one, i) => {
    const plan = found[i];
    return plan && isTold(one) ? [{ ...one, plan }] : [];
  });
}

export function useVariants() {
  const [list, setList] = useOutlasting("variants", NONE, readList, writeList);
  const add = (variants: readonly Variant[]) =>
    setList((now) => {
      const next = (now.at(-1)?.key ?? 0) + 1;
      return [...now, ...variants.map((one, i) => ({ ...one, key: next + i }))].slice(0, MOST_VARIANTS);
    });
  const rename = (key: number, name: string) =>
    setList((now) => now.map((one) => (one.key === key ? { ...one, name } : one)));
  const remove = (key: number) => setList((now) => now.filter((one) => one.key !== key));
  const removeAll = () => setList(NONE);
  return { list, add, rename, remove, removeAll };
}
