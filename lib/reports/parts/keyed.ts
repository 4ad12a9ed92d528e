/** Items with a key each. Printed texts may repeat, and a printed list never changes places, so position serves. */
export function keyed<T>(items: readonly T[]): readonly { readonly key: string; readonly item: T }[] {
  return items.map((item, position) => ({ key: String(position), item }));
}
