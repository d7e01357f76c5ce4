import { Notice } from "@/app/_ui/notice";

/** Under the rule set a roll stands on both its ends: one alone says nothing for it. */
export function OpenRolls({ rolls }: { readonly rolls: readonly string[] }) {
  if (rolls.length === 0) return null;
  return (
    <Notice kind="info" title="One end of a roll is not here">
      {`Both ends of a roll are measured. The other end is not here, or nobody said which end it is: ${rolls.join("; ")}.`}
    </Notice>
  );
}
