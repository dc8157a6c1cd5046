import fc from 'fast-check';

// A change is found, or not, by the same examples each time.
fc.configureGlobal({ seed: 1789 });
