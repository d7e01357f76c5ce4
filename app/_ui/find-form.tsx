import { Button } from "@/app/_ui/button";

type Props = {
  readonly path: string;
  readonly name: string;
  readonly label: string;
  readonly value: string;
  /** Filters that stay. */
  readonly kept?: Readonly<Record<string, string | undefined>>;
};

/** A plain GET form: the address holds the search. */
export function FindForm({ path, name, label, value, kept = {} }: Props) {
  return (
    <search>
      <form className="row" method="get" action={path}>
        {Object.entries(kept).map(([key, one]) =>
          one ? <input key={key} type="hidden" name={key} value={one} /> : null,
        )}
        <label htmlFor={`find-${name}`}>{label}</label>
        <input
          id={`find-${name}`}
          className="input find-input"
          name={name}
          type="search"
          defaultValue={value}
          maxLength={120}
        />
        <Button kind="quiet" type="submit">
          Find
        </Button>
      </form>
    </search>
  );
}
