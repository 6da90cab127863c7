/** One of a few: in a form with its label above, or as words inside a sentence. */
import { Button } from "react-aria-components/Button";
import { Label } from "react-aria-components/Label";
import { ListBox, ListBoxItem } from "react-aria-components/ListBox";
import { Popover } from "react-aria-components/Popover";
import { Select, SelectValue } from "react-aria-components/Select";
import "./controls.css";

export interface Option<Id extends string> {
  readonly id: Id;
  readonly words: string;
  readonly detail?: string;
  readonly isDisabled?: boolean;
}

export interface ChoiceProps<Id extends string> {
  readonly label: string;
  readonly value: Id;
  readonly options: readonly Option<Id>[];
  readonly onChange: (id: Id) => void;
  readonly inline?: boolean;
  readonly isDisabled?: boolean;
}

export function Choice<Id extends string>(props: ChoiceProps<Id>) {
  const { label, value, options, onChange, inline = false, isDisabled = false } = props;
  return (
    <Select
      className={inline ? "choice choice-inline" : "choice"}
      selectedKey={value}
      isDisabled={isDisabled}
      onSelectionChange={(key) => {
        const chosen = options.find((option) => option.id === key);
        if (chosen && chosen.id !== value) onChange(chosen.id);
      }}
    >
      <Label className={inline ? "unseen" : "field-label"}>{label}</Label>
      <Button className="choice-button">
        <SelectValue>{options.find((option) => option.id === value)?.words ?? ""}</SelectValue>
        <span className="choice-mark" aria-hidden="true" />
      </Button>
      <Popover className="float" offset={4}>
        <ListBox className="list">
          {options.map((option) => (
            <ListBoxItem
              key={option.id}
              id={option.id}
              className="list-item"
              textValue={option.words}
              isDisabled={option.isDisabled}
            >
              <span>{option.words}</span>
              {option.detail ? <span className="list-detail">{option.detail}</span> : null}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  );
}
