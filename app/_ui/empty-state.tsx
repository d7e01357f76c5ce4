import type { ReactNode } from "react";

type Props = {
  /** What is not there: "No runs yet". */
  readonly title: string;
  /** What belongs here and how to begin. */
  readonly children: ReactNode;
  /** A `LinkButton` that begins it. */
  readonly action?: ReactNode;
};

export function EmptyState({ title, children, action }: Props) {
  return (
    <div className="empty">
      <p className="empty-title">{title}</p>
      <div className="quiet">{children}</div>
      {action}
    </div>
  );
}
