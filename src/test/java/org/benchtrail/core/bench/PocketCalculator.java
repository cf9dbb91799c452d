package org.benchtrail.core.bench;

/**
 * Works out a line of working as somebody with a pocket calculator would: + - × / ^ √, brackets, exp, ln, log, min, max. Powers
 * bind before the sign, then × and / from the left.
 */
final class PocketCalculator {
    /** The text is no sum but words. */
    static final class NotASum extends Exception {
        private static final long serialVersionUID = 1L;
    }

    private final String text;
    private int at;

    private PocketCalculator(String text) {
        this.text = text;
    }

    static double evaluate(String text) throws NotASum {
        PocketCalculator calculator = new PocketCalculator(text);
        double value = calculator.sum();
        calculator.skip();
        if (calculator.at != text.length()) {
            throw new NotASum();
        }
        return value;
    }

    private void skip() {
        while (at < text.length() && text.charAt(at) == ' ') {
            at++;
        }
    }

    private boolean take(String token) {
        skip();
        if (!text.startsWith(token, at)) {
            return false;
        }
        at += token.length();
        return true;
    }

    private void need(String token) throws NotASum {
        if (!take(token)) {
            throw new NotASum();
        }
    }

    private double sum() throws NotASum {
        double value = product();
        while (true) {
            if (take("+")) {
                value += product();
            } else if (take("-")) {
                value -= product();
            } else {
                return value;
            }
        }
    }

    private double product() throws NotASum {
        double value = sign();
        while (true) {
            if (take("×")) {
                value *= sign();
            } else if (take("/")) {
                value /= sign();
            } else {
                return value;
            }
        }
    }

    private double sign() throws NotASum {
        return take("-") ? -sign() : power();
    }

    private double power() throws NotASum {
        double base = primary();
        return take("^") ? Math.pow(base, sign()) : base;
    }

    private double primary() throws NotASum {
        if (take("√")) {
            return Math.sqrt(primary());
        }
        if (take("(")) {
            double value = sum();
            need(")");
            return value;
        }
        for (String name : new String[] {"exp", "ln", "log", "min", "max"}) {
            if (take(name + "(")) {
                return function(name);
            }
        }
        return number();
    }

    private double function(String name) throws NotASum {
        double value = sum();
        while (take(",")) {
            double other = sum();
            value = name.equals("min") ? Math.min(value, other) : Math.max(value, other);
        }
        need(")");
        return switch (name) {
            case "exp" -> Math.exp(value);
            case "ln" -> Math.log(value);
            case "log" -> Math.log10(value);
            default -> value;
        };
    }

    private double number() throws NotASum {
        skip();
        int start = at;
        while (at < text.length() && (Character.isDigit(text.charAt(at)) || text.charAt(at) == '.')) {
            at++;
        }
        if (at > start && at < text.length() && text.charAt(at) == 'e') {
            at++;
            if (at < text.length() && text.charAt(at) == '-') {
                at++;
            }
            while (at < text.length() && Character.isDigit(text.charAt(at))) {
                at++;
            }
        }
        try {
            return Double.parseDouble(text.substring(start, at));
        } catch (NumberFormatException e) {
            throw new NotASum();
        }
    }
}
