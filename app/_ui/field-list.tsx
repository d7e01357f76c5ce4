import type { ReactNode } from "react";

type Props = {
  readonly items: readonly { readonly label: string; readonly value: ReactNode }[];
  /** Label above value, several side by side: for the head of a page. */
  readonly columns?: boolean;
};

/** Facts about one thing: label and value. An empty value shows as "not recorded", never as nothing. */
export function FieldList({ items, columns }: Props) {
  const shown = (value: ReactNode) =>
    value === null || value === undefined || value === "" ? (
      <span className="quiet">not recorded</span>
    ) : (
      value
    );
  if (columns)
    return (
      <dl className="facts facts-columns">
        {items.map((item) => (
          <div key={item.label}>
            <dt>{item.label}</dt>
            <dd>{shown(item.value)}</dd>
          </div>
        ))}
      </dl>
    );
  return (
    <dl className="facts">
      {items.flatMap((item) => [
        <dt key={`${item.label}:label`}>{item.label}</dt>,
        <dd key={`${item.label}:value`}>{shown(item.value)}</dd>,
      ])}
    </dl>
  );
}
