import { NothingHere } from "@/app/_ui/nothing-here";

export const metadata = { title: "Not there" };

/** Within the house, which has its head already. */
export default function NotFound() {
  return <NothingHere />;
}
