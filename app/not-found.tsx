import { BareShell } from "@/app/_ui/bare-shell";
import { NothingHere } from "@/app/_ui/nothing-here";

export const metadata = { title: "Not there" };

export default function NotFound() {
  return (
    <BareShell>
      <NothingHere />
    </BareShell>
  );
}
