/** Keeps a value under a name, and lets go of the one kept first where there are more than `most`: memory stays bounded. */
export function remember<Value>(known: Map<string, Value>, name: string, value: Value, most: number): void {
  known.delete(name);
  const [first] = known.keys();
  if (known.size >= most && first !== undefined) known.delete(first);
  known.set(name, value);
}
