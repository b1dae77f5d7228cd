// Short tags for names: one to three letters that fit where the name does not, all different. The sheet's key lists them.

function lettersOf(name: string, id: string): string {
  const plain = name.normalize('NFD').replace(/[^A-Za-z0-9 -]/g, '');
  return /[A-Za-z0-9]/.test(plain) ? plain : id.replace(/[^A-Za-z0-9 -]/g, '');
}

function candidates(name: string, id: string): readonly string[] {
  const letters = lettersOf(name, id);
  const words = letters.split(/[ -]+/).filter((word) => word !== '');
  const first = words[0]?.[0]?.toUpperCase() ?? 'X';
  const others = [...words.slice(1).map((word) => word[0] ?? ''), ...letters.replace(/[ -]/g, '').slice(1)];
  const seconds = others.filter((letter) => letter !== '').map((letter) => letter.toLowerCase());
  // From two metres i, j and l are the same stroke.
  const clear = seconds.filter((letter) => !/[ijl]/.test(letter));
  return [...[...clear, ...seconds].map((letter) => first + letter), first];
}

function numbered(first: string, taken: ReadonlySet<string>): string {
  let number = 2;
  while (taken.has(`${first}${number}`)) number += 1;
  return `${first}${number}`;
}

/** A tag for each thing, in their order; a name keeps its tag as long as the things before it stay the same. */
export function shortTags(things: readonly { readonly id: string; readonly name: string }[]): readonly string[] {
  const taken = new Set<string>();
  return things.map(({ id, name }) => {
    const wanted = candidates(name, id);
    const tag = wanted.find((text) => !taken.has(text)) ?? numbered(wanted[0]?.[0] ?? 'X', taken);
    taken.add(tag);
    return tag;
  });
}
