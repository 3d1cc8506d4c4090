/** Meters on a serial line or a TCP connection. The only place from which a connection is made. */
package loopwright.io.instrument;
