import type { PublishedCase } from './publishedCase.ts';
import { v01 } from './v01.ts';
import { v02 } from './v02.ts';
import { v03 } from './v03.ts';
import { v04 } from './v04.ts';
import { v05 } from './v05.ts';
import { v06 } from './v06.ts';
import { v07 } from './v07.ts';
import { v08 } from './v08.ts';
import { v09 } from './v09.ts';
import { v10 } from './v10.ts';
import { v11 } from './v11.ts';
import { v12 } from './v12.ts';
import { v13 } from './v13.ts';
import { v14 } from './v14.ts';
import { v15 } from './v15.ts';
import { v16 } from './v16.ts';
import { v17 } from './v17.ts';
import { v18 } from './v18.ts';
import { v19 } from './v19.ts';
import { v20 } from './v20.ts';
import { v21 } from './v21.ts';
import { v22 } from './v22.ts';
import { v23 } from './v23.ts';
import { v24 } from './v24.ts';
import { v25 } from './v25.ts';
import { v26 } from './v26.ts';
import { v27 } from './v27.ts';
import { v28 } from './v28.ts';
import { v29 } from './v29.ts';
import { v30 } from './v30.ts';
import { v31 } from './v31.ts';
import { v32 } from './v32.ts';
import { v33 } from './v33.ts';
import { v34 } from './v34.ts';
import { v35 } from './v35.ts';
import { v36 } from './v36.ts';
import { v37 } from './v37.ts';

/** All published validation cases, in order; one file each. */
export const PUBLISHED_CASES: readonly PublishedCase[] = [
  v01,
  v02,
  v03,
  v04,
  v05,
  v06,
  v07,
  v08,
  v09,
  v10,
  v11,
  v12,
  v13,
  v14,
  v15,
  v16,
  v17,
  v18,
  v19,
  v20,
  v21,
  v22,
  v23,
  v24,
  v25,
  v26,
  v27,
  v28,
  v29,
  v30,
  v31,
  v32,
  v33,
  v34,
  v35,
  v36,
  v37,
];
