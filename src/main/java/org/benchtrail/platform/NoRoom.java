package org.benchtrail.platform;

/** The disk has hardly any room left, so files are refused. */
public final class NoRoom extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public NoRoom() {
        super("The server's disk is nearly full, so files are refused; what is typed is still recorded.");
    }
}
