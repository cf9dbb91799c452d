package org.benchtrail.people;

/** A token just made, with its secret: the only moment at which the secret can be read. */
public record NewToken(TokenView token, String secret) {
    /** Leaves the secret out, so that no log can hold it. */
    @Override
    public String toString() {
        return "NewToken[" + token + "]";
    }
}
