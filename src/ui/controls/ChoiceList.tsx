/** The list of a choice, over the page. */
import { ListBox, ListBoxItem } from "react-aria-components/ListBox";
import { Popover } from "react-aria-components/Popover";
import type { ChoiceProps } from "./Choice.tsx";
import type { Float } from "./use-float.ts";

export default function ChoiceList<Id extends string>({
  label,
  value,
  options,
  onChange,
  float,
}: Pick<ChoiceProps<Id>, "label" | "value" | "options" | "onChange"> & { float: Float }) {
  const close = () => float.onOpenChange(false);
  return (
    <Popover className="float" offset={4} aria-label={label} {...float}>
      <ListBox
        className="list"
        aria-label={label}
        autoFocus
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[value]}
        shouldSelectOnPressUp
        shouldFocusOnHover
        onSelectionChange={(keys) => {
          const chosen = options.find((option) => keys !== "all" && keys.has(option.id));
          if (chosen) onChange(chosen.id);
          close();
        }}
      >
        {options.map((option) => (
          <ListBoxItem
            key={option.id}
            id={option.id}
            className="list-item"
            textValue={option.words}
            isDisabled={option.isDisabled}
            onPress={close}
          >
            <span>{option.words}</span>
            {option.detail ? <span className="list-detail">{option.detail}</span> : null}
          </ListBoxItem>
        ))}
      </ListBox>
    </Popover>
  );
}
