/** A wish that a file brought, in sentences: all that it asks for, to be read here and changed in the file. */
import { Button } from "../controls/Button.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { AXES, draftOf, type GivenWish } from "./draft.ts";
import { useMeasureSaid } from "./use-measure-said.ts";

export function GivenWishWords({ name, wish }: GivenWish) {
  const words = useWords(ideasWords);
  const studio = useStudioStore();
  const { number, length } = useFormat();
  const { span } = useMeasureSaid();
  const { given } = words.wish;
  const { piece, rig, limits = {}, want, keep = [], meets } = wish;
  const limited = AXES.flatMap((axis) => {
    const limit = limits[axis];
    return limit ? [words.axisPart(words.axis[axis], span(axis, ...limit))] : [];
  });
  const wanted = AXES.flatMap((axis) =>
    want[axis] ? [given.weight(words.axis[axis], number(want[axis], 2))] : [],
  );
  const between = ([least, most]: readonly [number, number]) => given.between(String(least), String(most));
  const sentences = [
    given.work(
      words.wish.on(length(piece.diameterMm, 1)),
      rig.wheelStops === null ? words.wish.noWheel : words.wish.wheel(String(rig.wheelStops)),
      between(wish.tiers),
      between(wish.facets),
      words.wish.sides[wish.sides],
    ),
    ...(keep.length > 0 ? [given.keep(keep.length)] : []),
    ...(meets === "rings" ? [given.rings] : []),
    ...(limited.length > 0 ? [given.limits(limited.join("; "))] : []),
    wanted.length > 0 ? given.wants(wanted.join("; ")) : given.wantsNothing,
    given.axes(words.axis[wish.across], words.axis[wish.up]),
  ];
  return (
    <section className="idea-given" aria-label={given.title(name)}>
      <p className="soft">{given.title(name)}</p>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <Button look="outlined" onPress={() => draftOf(studio).setState({ given: null })}>
        {given.own}
      </Button>
    </section>
  );
}
