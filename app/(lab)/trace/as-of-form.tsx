import { Button } from "@/app/_ui/button";

type Props = {
  readonly on: string;
  /** Other parts of the address that stay. */
  readonly kept?: Readonly<Record<string, string>>;
};

/** A plain GET form: the address holds the day. On paper it is left out. */
export function AsOfForm({ on, kept = {} }: Props) {
  return (
    <div className="form-inline">
      <form className="row" method="get" aria-label="As of a date">
        {Object.entries(kept).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        <label htmlFor="on">As of</label>
        <input id="on" name="on" type="date" defaultValue={on} required />
        <Button kind="quiet" type="submit">
          Show
        </Button>
      </form>
    </div>
  );
}
