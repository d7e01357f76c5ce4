import type { ReactNode } from "react";

type Props = {
  readonly title: ReactNode;
  /** A `Breadcrumb`. */
  readonly crumbs?: ReactNode;
  /** A `StateMark` that stands beside the title. */
  readonly state?: ReactNode;
  /** One sentence under the title. */
  readonly lead?: ReactNode;
  /** A `Thread`: where the thing of this page stands. */
  readonly thread?: ReactNode;
  /** Buttons and links, right of the title. At most one of kind "primary" on a page. */
  readonly actions?: ReactNode;
  readonly children?: ReactNode;
};

/** The shape of every page: title, thread, then sections with their headings in the margin. Stands inside `main`. */
export function Page({ title, crumbs, state, lead, thread, actions, children }: Props) {
  return (
    <div className="page">
      <header className="page-head">
        {crumbs}
        <div className="page-title">
          <h1>{title}</h1>
          {state}
          {actions ? <div className="page-actions">{actions}</div> : null}
        </div>
        {lead ? <p className="page-lead">{lead}</p> : null}
        {thread}
      </header>
      {children}
    </div>
  );
}
