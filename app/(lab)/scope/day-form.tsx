import { Button } from "@/app/_ui/button";
import { DateField } from "@/app/_ui/date-field.client";

/** The scope as of a day: a plain form, so that the day stands in the address. */
export function DayForm({ day }: { readonly day: string }) {
  return (
    <form className="form-inline" action="/scope" aria-label="As of a day">
      <DateField name="on" label="As of" defaultValue={day} />
      <Button type="submit" kind="quiet">
        Show
      </Button>
    </form>
  );
}
