import { parse } from 'devalue';
import { openPage, type PageData } from './page.js';

const data = document.getElementById('data')?.textContent ?? '';
openPage(parse(data) as PageData);
