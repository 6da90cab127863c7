/** A few words side by side, one of them chosen (a segmented control, radio buttons). */
import { Label } from "react-aria-components/Label";
import { Radio, RadioGroup } from "react-aria-components/RadioGroup";
import "./controls.css";

export function Pick<Id extends string>({
  label,
  value,
  options,
  onChange,
  labelUnseen = false,
}: {
  label: string;
  value: Id;
  options: readonly { readonly id: Id; readonly words: string }[];
  onChange: (id: Id) => void;
  labelUnseen?: boolean;
}) {
  return (
    <RadioGroup
      className="pick"
      value={value}
      orientation="horizontal"
      onChange={(id) => {
        const chosen = options.find((option) => option.id === id);
        if (chosen) onChange(chosen.id);
      }}
    >
      <Label className={labelUnseen ? "unseen" : "field-label"}>{label}</Label>
      <span className="pick-row">
        {options.map((option) => (
          <Radio key={option.id} value={option.id} className="pick-one">
            {option.words}
          </Radio>
        ))}
      </span>
    </RadioGroup>
  );
}
