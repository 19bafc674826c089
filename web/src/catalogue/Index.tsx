import { useState } from 'preact/hooks';
import type { CatalogueList } from '../api/contract.ts';
import { go } from '../shell/places.ts';
import { type CatalogueAddress, catalogueAddress } from './catalogueAddress.ts';

/** All actives and crops, to be searched. */
export function Index({ list, at }: { list: CatalogueList; at: CatalogueAddress }) {
  const [search, setSearch] = useState('');
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const found = (text: string) => words.every((word) => text.toLowerCase().includes(word));
  const actives = list.actives.filter(({ name, aliases, group }) =>
    found([name, ...aliases, `group ${group}`].join(' ')),
  );
  const crops = list.crops.filter(({ name, botanicalName, aliases, kind }) =>
    found([name, botanicalName, kind, ...aliases].join(' ')),
  );
  /** Enter goes to the first that is found. */
  function first(event: Event): void {
    event.preventDefault();
    const { country } = at;
    if (words.length === 0) return;
    if (actives.length > 0) go(catalogueAddress({ active: actives[0].name, country }));
    else if (crops.length > 0) go(catalogueAddress({ crop: crops[0].name, country }));
  }

  return (
    <>
      <p class="back">
        <a href="/catalogue">The whole catalogue</a>
      </p>
      <div class="index-body" data-searching={words.length > 0 ? '' : undefined}>
        <form class="search" onSubmit={first}>
          <label for="catalogue-search">Search actives and crops</label>
          <div class="frame">
            <input
              id="catalogue-search"
              type="search"
              autocomplete="off"
              spellcheck={false}
              data-testid="catalogue-search"
              value={search}
              onInput={({ currentTarget }) => setSearch(currentTarget.value)}
            />
          </div>
        </form>
        <p class="unseen" role="status">
          {words.length > 0 && `${actives.length} actives, ${crops.length} crops`}
        </p>
        {actives.length + crops.length === 0 && <p class="small">Nothing is called so here.</p>}
        {actives.length > 0 && (
          <nav aria-labelledby="index-actives">
            <h2 class="margin-title" id="index-actives">
              Actives
            </h2>
            <ul class="index" data-testid="index-actives">
              {actives.map(({ name, group }) => (
                <li key={name}>
                  <a
                    href={catalogueAddress({ active: name, country: at.country })}
                    aria-current={at.active === name ? 'page' : undefined}
                  >
                    {name}
                  </a>
                  <small>group {group}</small>
                </li>
              ))}
            </ul>
          </nav>
        )}
        {crops.length > 0 && (
          <nav aria-labelledby="index-crops">
            <h2 class="margin-title" id="index-crops">
              Crops
            </h2>
            <ul class="index" data-testid="index-crops">
              {crops.map(({ name, kind }) => (
                <li key={name}>
                  <a
                    href={catalogueAddress({ crop: name, country: at.country })}
                    aria-current={at.active === null && at.crop === name ? 'page' : undefined}
                  >
                    {name}
                  </a>
                  <small>{kind}</small>
                </li>
              ))}
            </ul>
          </nav>
        )}
      </div>
    </>
  );
}
