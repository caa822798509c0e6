import { render, Text, useInput } from 'ink';

/** The least an Ink program does that takes keys. */
function Hello() {
  useInput(() => {});
  return <Text>hello</Text>;
}

render(<Hello />);
