/** The list of what can be done, over the page (a menu's popover). */
import { Menu, MenuItem } from "react-aria-components/Menu";
import { Popover } from "react-aria-components/Popover";
import type { Action } from "./Actions.tsx";
import type { Float } from "./use-float.ts";

export default function ActionList({
  label,
  actions,
  float,
}: {
  label: string;
  actions: readonly Action[];
  float: Float;
}) {
  return (
    <Popover className="float" placement="bottom end" offset={4} aria-label={label} {...float}>
      <Menu
        className="list"
        aria-label={label}
        autoFocus="first"
        disabledKeys={actions.filter((action) => action.isDisabled).map((action) => action.id)}
        onClose={() => float.onOpenChange(false)}
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
  );
}
