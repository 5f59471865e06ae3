// The English of this page alone, there before anything of it is said.
import { also } from './sentences.js';
import words from './stores-english.js';

also(words);
