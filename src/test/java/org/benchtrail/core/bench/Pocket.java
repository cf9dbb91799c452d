package org.benchtrail.core.bench;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A pocket calculator for the lines of a working: + - × / ^ √, brackets, ln, max, min, e, Φ and C(n, k) are what a
 * trainee may be asked to key in. A line in words is no sum and gives nothing.
 */
final class Pocket {
    private static final class NoSum extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    private final String text;
    private int at;
    private double largest;

    private Pocket(String text) {
        this.text = text.replace(" ", "");
    }

    record Sum(double value, double largestTerm) {}

    /** The value of a sum and the largest number met on the way, which bounds what rounding of the parts can do. */
    static Optional<Sum> of(String text) {
        Pocket pocket = new Pocket(text);
        try {
            double value = pocket.sum();
            return pocket.at == pocket.text.length() ? Optional.of(new Sum(value, pocket.largest)) : Optional.empty();
        } catch (NoSum e) {
            return Optional.empty();
        }
    }

    private double sum() {
        double value = product();
        while (true) {
            if (eat("+")) {
                value += product();
            } else if (eat("-")) {
                value -= product();
            } else {
                return note(value);
            }
        }
    }

    private double product() {
        double value = signed();
        while (true) {
            if (eat("×")) {
                value *= signed();
            } else if (eat("/")) {
                value /= signed();
            } else {
                return note(value);
            }
        }
    }

    private double signed() {
        return eat("-") ? -power() : power();
    }

    private double power() {
        double base = atom();
        return eat("^") ? Math.pow(base, signed()) : base;
    }

    private double atom() {
        if (eat("√")) {
            return Math.sqrt(atom());
        }
        for (String name : List.of("ln", "max", "min", "Φ", "C")) {
            if (eat(name + "(")) {
                return call(name, arguments());
            }
        }
        if (eat("e")) {
            return Math.E;
        }
        if (eat("(")) {
            double value = sum();
            need(")");
            return value;
        }
        return number();
    }

    private List<Double> arguments() {
        List<Double> arguments = new ArrayList<>();
        do {
            arguments.add(sum());
        } while (eat(","));
        need(")");
        return arguments;
    }

    private static double call(String name, List<Double> x) {
        return switch (name) {
            case "ln" -> Math.log(x.get(0));
            case "max" -> Math.max(x.get(0), x.get(1));
            case "min" -> Math.min(x.get(0), x.get(1));
            case "Φ" -> NormalDistribution.of(0, 1).cumulativeProbability(x.get(0));
            default -> choose(x.get(0).intValue(), x.get(1).intValue());
        };
    }

    private static double choose(int n, int k) {
        BigInteger value = BigInteger.ONE;
        for (int i = 1; i <= k; i++) {
            value = value.multiply(BigInteger.valueOf(n - k + i)).divide(BigInteger.valueOf(i));
        }
        return value.doubleValue();
    }

    private double number() {
        int from = at;
        while (at < text.length() && (Character.isDigit(text.charAt(at)) || text.charAt(at) == '.')) {
            at++;
        }
        if (at > from
                && text.startsWith("e-", at)
                && at + 2 < text.length()
                && Character.isDigit(text.charAt(at + 2))) {
            at += 2;
            while (at < text.length() && Character.isDigit(text.charAt(at))) {
                at++;
            }
        }
        if (at == from) {
            throw new NoSum();
        }
        return note(new BigDecimal(text.substring(from, at)).doubleValue());
    }

    private double note(double value) {
        largest = Math.max(largest, Math.abs(value));
        return value;
    }

    private boolean eat(String token) {
        if (text.startsWith(token, at)) {
            at += token.length();
            return true;
        }
        return false;
    }

    private void need(String token) {
        if (!eat(token)) {
            throw new NoSum();
        }
    }

    /** The number before the unit in the last part of a line of working. */
    static OptionalDouble result(String withNumbers) {
        String tail = withNumbers.substring(withNumbers.lastIndexOf(" = ") + 3);
        String number = tail.split(" ", 2)[0];
        return number.matches("-?[0-9.]+(e-?[0-9]+)?")
                ? OptionalDouble.of(Double.parseDouble(number))
                : OptionalDouble.empty();
    }
}
