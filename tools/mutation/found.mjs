// With `--progress` the mutants nobody noticed are printed as they are found: a run may take an hour.
class Found {
  onMutantTested({ status, fileName, location, mutatorName, replacement }) {
    if (status === 'Survived' || status === 'NoCoverage') console.log(`  ${fileName.slice(fileName.indexOf('packages/'))}:${location.start.line}:${location.start.column} ${mutatorName} → ${(replacement ?? '').replaceAll(/\s+/g, ' ').slice(0, 100)}`);
  }
}

export const strykerPlugins = [{ kind: 'Reporter', name: 'found', injectableClass: Found }];
