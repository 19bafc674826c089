import { type ComponentChildren, createContext } from 'preact';
import { useContext, useMemo } from 'preact/hooks';
import { FormContext, useBlanks } from './FormContext.ts';

/** What a blank is about: a question, a kept record, or one entry of a list in either. */
export interface Subject<T> {
  readonly of: T;
  readonly set: (part: Partial<T>) => void;
  /** Name of a blank's field as refusals and kept texts call it. */
  readonly at: (name: string) => string;
}

const SubjectContext = createContext<Subject<never> | null>(null);

interface SubjectProps<T> {
  readonly of: T;
  readonly set: (part: Partial<T>) => void;
  /** Name of the entry, such as "treatments.0"; empty for the record itself. */
  readonly field?: string;
  readonly children: ComponentChildren;
}

/** Makes something the subject of the blanks inside. */
export function SubjectOf<T extends object>({ of, set, field = '', children }: SubjectProps<T>) {
  const subject = { of, set, at: (name: string) => (field === '' ? name : `${field}.${name}`) };
  return (
    <SubjectContext.Provider value={subject as unknown as Subject<never>}>{children}</SubjectContext.Provider>
  );
}

/** The subject of a blank, as far as the blank looks at it; the question where nothing else is named. */
export function useSubject<T extends object>(): Subject<T> & ReturnType<typeof useBlanks> {
  const own = useContext(SubjectContext) as unknown as Subject<T> | null;
  const form = useBlanks();
  const asked = useContext(FormContext);
  return useMemo(() => {
    if (own !== null) return { ...form, ...own };
    if (asked === null || !('question' in asked)) throw new Error('A blank stands outside its subject.');
    const { question, change } = asked;
    return {
      ...form,
      of: question as unknown as T,
      set: change as unknown as Subject<T>['set'],
      at: (name: string) => name,
    };
  }, [own, form, asked]);
}
