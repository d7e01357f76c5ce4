import { Notice } from "@/app/_ui/notice";

/** What a rule set asks of each sensor that comes in, on the form and on the page of a file. */
export const RollNotice = () => (
  <Notice kind="info" title="Lot and roll of each sensor">
    The customer is audited by a rule set: write lot and roll, and of a roll which end each piece is. Both
    ends are measured.
  </Notice>
);
