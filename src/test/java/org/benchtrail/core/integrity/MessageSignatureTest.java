package org.benchtrail.core.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Base64;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MessageSignatureTest {
    /** The example that the libraries of Standard Webhooks are tested with. */
    private static final byte[] SECRET = MessageSignature.secret("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw");

    private static final String ID = "msg_p5jXN8AQM9LWM0D4loKWxJek";
    private static final long SECONDS = 1614265330;
    private static final String BODY = "{\"test\": 2432232314}";

    @Test
    void publishedExample() {
        assertEquals("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=", MessageSignature.of(SECRET, ID, SECONDS, BODY));
    }

    @Test
    void otherTimeIdBodyOrSecret_otherSignature() {
        String right = MessageSignature.of(SECRET, ID, SECONDS, BODY);
        byte[] other = SECRET.clone();
        other[0] ^= 1;
        assertNotEquals(right, MessageSignature.of(SECRET, ID + "1", SECONDS, BODY));
        assertNotEquals(right, MessageSignature.of(SECRET, ID, SECONDS + 1, BODY));
        assertNotEquals(right, MessageSignature.of(SECRET, ID, SECONDS, BODY + " "));
        assertNotEquals(right, MessageSignature.of(other, ID, SECONDS, BODY));
    }

    @ParameterizedTest
    @ValueSource(ints = {24, 32, 64})
    void secretOfEnoughBytes_isRead(int bytes) {
        String written = "whsec_" + Base64.getEncoder().encodeToString(new byte[bytes]);
        assertEquals(bytes, MessageSignature.secret(written).length);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "whsec_",
                "MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw",
                "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLa",
                "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaS?",
                "whsec_AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA="
            })
    void otherSecret_isRefused_andNotRepeated(String written) {
        String told = assertThrows(IllegalArgumentException.class, () -> MessageSignature.secret(written))
                .getMessage();
        assertFalse(told.contains("MfKQ"), told);
    }
}
