import { useCallback, useEffect, useState } from 'preact/hooks';
import type { Example, QuestionInput } from '../api/contract.ts';
import { requestJson } from '../api/requestJson.ts';
import { decodeAddress, encodeAddress } from '../question/address.ts';
import type { Units } from '../units/units.ts';
import { lastFieldSearch } from './places.ts';

/**
 * Addresses of the question that was last asked, some of it changed; where none was asked, of the worked example.
 * Until that is known the link leads to the question as it stands.
 */
export function useQuestionLink(units: Units): (change: Partial<QuestionInput>) => string {
  const [base, setBase] = useState(() => decodeAddress(lastFieldSearch()).question);
  useEffect(() => {
    if (base !== null) return;
    let left = false;
    requestJson<Example>('/api/example').then(
      ({ question }) => !left && setBase(question),
      () => undefined,
    );
    return () => {
      left = true;
    };
  }, [base]);
  return useCallback(
    (change) => (base === null ? '/' : `/${encodeAddress({ ...base, ...change }, units)}`),
    [base, units],
  );
}
