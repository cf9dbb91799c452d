package org.benchtrail.platform;

/** The person is known and may not do this. */
public final class Forbidden extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param sentence who may do it, in words for the reader */
    public Forbidden(String sentence) {
        super(sentence);
    }
}
