/** What several features' tests stand on: visitors over HTTP, a browser, invented people. */
package loopwright.testing;
