export default () => {};
