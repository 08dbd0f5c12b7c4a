import { parse } from 'devalue';
import type { Scheme } from '../language/model.js';
import { openPage } from './page.js';

const data = document.getElementById('data')?.textContent ?? '';
openPage(parse(data) as Scheme);
