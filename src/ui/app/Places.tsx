/** The places for one piece. */
import { Button } from "react-aria-components/Button";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { useStudio } from "../use-studio.ts";
import { PLACE_NAMES } from "./place-pages.ts";

export function Places() {
  const words = useWords(shellWords);
  const here = useStudio((state) => state.place);
  const go = useStudio((state) => state.go);
  return (
    <nav className="places" aria-label={words.places.label}>
      {PLACE_NAMES.map((place) => (
        <Button
          key={place}
          className="place"
          aria-current={place === here ? "page" : undefined}
          data-here={place === here || undefined}
          onPress={() => go(place)}
        >
          {words.places[place]}
        </Button>
      ))}
    </nav>
  );
}
