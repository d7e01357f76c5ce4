/** Where a place of version 2 stands in the file of version 1 that was given. */
export function pathInVersion1(path: string): string {
  return path
    .replace(/\.correction\.singlePointReachCelsius$/, ".singlePointReachCelsius")
    .replace(/\.correction(\.points)?/, ".deviations");
}
