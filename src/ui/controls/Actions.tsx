/** A list of things to do, behind one word. */
import { Button } from "react-aria-components/Button";
import { Menu, MenuItem, MenuTrigger } from "react-aria-components/Menu";
import { Popover } from "react-aria-components/Popover";
import "./controls.css";

export interface Action {
  readonly id: string;
  readonly words: string;
  readonly keys?: string;
  readonly isDisabled?: boolean;
  readonly run: () => void;
}

export function Actions({
  label,
  shown,
  actions,
}: {
  /** What a screen reader says. */
  label: string;
  /** What is seen, the label when missing. */
  shown?: string;
  actions: readonly Action[];
}) {
  return (
    <MenuTrigger>
      <Button className="press press-plain" aria-label={label}>
        {shown ?? label}
      </Button>
      <Popover className="float" placement="bottom end" offset={4}>
        <Menu
          className="list"
          disabledKeys={actions.filter((action) => action.isDisabled).map((action) => action.id)}
          onAction={(id) => actions.find((action) => action.id === id)?.run()}
        >
          {actions.map((action) => (
            <MenuItem key={action.id} id={action.id} className="list-item" textValue={action.words}>
              <span>{action.words}</span>
              {action.keys ? <kbd className="list-keys">{action.keys}</kbd> : null}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
