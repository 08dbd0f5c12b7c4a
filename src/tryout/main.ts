import { parse } from 'devalue';
import type { PageData } from '../documents/tryout/page-data.js';
import { openPage } from './page.js';

const data = document.getElementById('data')?.textContent ?? '';
openPage(parse(data) as PageData);
