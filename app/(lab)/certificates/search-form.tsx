import { Button } from "@/app/_ui/button";

/** A plain GET form: the address holds the search. */
export function SearchForm({ search }: { readonly search: string }) {
  return (
    <search>
      <form className="row" method="get">
        <label htmlFor="q">Number, serial, tag, customer or order</label>
        <input id="q" name="q" type="search" defaultValue={search} maxLength={80} />
        <Button kind="quiet" type="submit">
          Find
        </Button>
      </form>
    </search>
  );
}
