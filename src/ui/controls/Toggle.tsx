/** On or off, said beside it. */
import type { ReactNode } from "react";
import { Switch } from "react-aria-components/Switch";
import "./controls.css";

export function Toggle({
  isOn,
  onChange,
  children,
}: {
  isOn: boolean;
  onChange: (on: boolean) => void;
  children: ReactNode;
}) {
  return (
    <Switch className="toggle" isSelected={isOn} onChange={onChange}>
      <span className="toggle-track" aria-hidden="true" />
      {children}
    </Switch>
  );
}
