const interval = /recalibrat|interval|every \d+ (months|years)/i;

/**
 * ISO/IEC 17025 7.8.4.3: no recommendation on the calibration interval, unless the customer agreed to one. Words alone do
 * not show whether they recommend or report; so it is a caution to whoever signs, and refuses nothing.
 */
export const speaksOfInterval = (text: string): boolean => interval.test(text);

export const intervalCaution =
  "This seems to speak of a recalibration interval. The certificate says that the laboratory recommends none; sign it only if the interval was agreed with the customer (ISO/IEC 17025 7.8.4.3).";
