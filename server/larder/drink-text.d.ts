/** A `.drink` file imported as its text: the bundler and the test runner both load it so. */
declare module "*.drink" {
  const text: string;
  export default text;
}
