import type { ButtonHTMLAttributes } from "react";

type Props = ButtonHTMLAttributes<HTMLButtonElement> & {
  /** "primary" once a page, for the action that matters; "danger" for what cannot be undone. */
  readonly kind?: "primary" | "quiet" | "danger";
  /** "bench": large, for gloves at the furnace. */
  readonly size?: "desk" | "bench";
};

export function Button({ kind = "quiet", size = "desk", type = "button", className, ...rest }: Props) {
  return (
    <button
      {...rest}
      type={type}
      className={className ? `button ${className}` : "button"}
      data-kind={kind}
      data-size={size}
    />
  );
}
