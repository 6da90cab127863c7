/** A thing to press. Words, not pictures; `strong` once a screen at most. */
import type { ReactNode } from "react";
import { Button as AriaButton, type ButtonProps } from "react-aria-components/Button";
import "./controls.css";

export interface PressProps extends Omit<ButtonProps, "children" | "className"> {
  /** `plain`: words alone; `outlined`: with a hairline around; `strong`: filled with the accent. */
  readonly look?: "plain" | "outlined" | "strong";
  readonly className?: string;
  readonly children?: ReactNode;
}

export function Button({ look = "plain", className = "", ...rest }: PressProps) {
  return <AriaButton {...rest} className={`press press-${look} ${className}`} />;
}
