/** A thing to press. Words, not pictures; `strong` once a screen at most. */
import { type ReactNode, useState } from "react";
import { Button as AriaButton, type ButtonProps } from "react-aria-components/Button";
import "./controls.css";

export interface PressProps extends Omit<ButtonProps, "children" | "className"> {
  /** `plain`: words alone; `outlined`: with a hairline around; `strong`: filled with the accent. */
  readonly look?: "plain" | "outlined" | "strong";
  readonly className?: string;
  readonly children?: ReactNode;
}

/**
 * A button that stops being of use while it has the focus (the last step undone) keeps the focus, inert, until it is left:
 * a browser drops the focus of a disabled button, and a person at the keyboard would start again at the top of the page.
 */
export function Button({ look = "plain", className = "", isDisabled = false, onPress, ...rest }: PressProps) {
  const [isFocused, setFocused] = useState(false);
  const isInert = isDisabled && isFocused;
  return (
    <AriaButton
      {...rest}
      isDisabled={isDisabled && !isFocused}
      aria-disabled={isInert || undefined}
      onFocusChange={setFocused}
      onPress={isInert ? undefined : onPress}
      className={`press press-${look} ${className}`}
    />
  );
}
